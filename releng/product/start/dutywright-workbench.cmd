@echo off
rem SPDX-License-Identifier: EPL-2.0
rem Opens the window of Dutywright. DUTYWRIGHT_WORKSPACE is the folder of its jobs, unless -data FOLDER names it.
setlocal enabledelayedexpansion
set "HOME_FOLDER=%~dp0"
set "JAVA_COMMAND=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA_COMMAND=%JAVA_HOME%\bin\java.exe"
if exist "%HOME_FOLDER%jre\bin\java.exe" set "JAVA_COMMAND=%HOME_FOLDER%jre\bin\java.exe"
if not defined DUTYWRIGHT_WORKSPACE set "DUTYWRIGHT_WORKSPACE=%USERPROFILE%\dutywright-workspace"
for %%j in ("%HOME_FOLDER%plugins\org.eclipse.equinox.launcher_*.jar") do set "LAUNCHER=%%~fj"
rem The last -data counts, so one on the command line wins.
:again
"%JAVA_COMMAND%" -Xmx2g --enable-native-access=ALL-UNNAMED "-Djava.util.logging.config.file=%HOME_FOLDER%configuration\logging.properties" %DUTYWRIGHT_JAVA_OPTS% -jar "%LAUNCHER%" -name Dutywright -data "%DUTYWRIGHT_WORKSPACE%" %*
if %ERRORLEVEL%==23 goto again
exit /b %ERRORLEVEL%
