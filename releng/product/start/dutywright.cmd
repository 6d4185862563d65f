@echo off
rem SPDX-License-Identifier: EPL-2.0
rem dutywright COMMAND ...: the command line. "dutywright workbench" opens the window, as dutywright-workbench.cmd does.
rem DUTYWRIGHT_JAVA_OPTS holds further options of the Java machine, for instance -Xmx4g.
setlocal
set "HOME_FOLDER=%~dp0"
set "JAVA_COMMAND=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA_COMMAND=%JAVA_HOME%\bin\java.exe"
if exist "%HOME_FOLDER%jre\bin\java.exe" set "JAVA_COMMAND=%HOME_FOLDER%jre\bin\java.exe"
"%JAVA_COMMAND%" -version >nul 2>&1
if errorlevel 1 (
  echo dutywright: there is no Java: install Java 21 or newer, or set JAVA_HOME to where it is 1>&2
  exit /b 69
)
if /i "%~1"=="workbench" goto workbench
"%JAVA_COMMAND%" -Xmx1g --enable-native-access=ALL-UNNAMED %DUTYWRIGHT_JAVA_OPTS% -jar "%HOME_FOLDER%lib\dutywright.jar" %*
exit /b %ERRORLEVEL%

:workbench
call "%HOME_FOLDER%dutywright-workbench.cmd" %2 %3 %4 %5 %6 %7 %8 %9
exit /b %ERRORLEVEL%
