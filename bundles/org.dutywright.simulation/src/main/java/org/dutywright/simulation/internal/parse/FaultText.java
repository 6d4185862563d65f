// SPDX-License-Identifier: EPL-2.0
package org.dutywright.simulation.internal.parse;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.dutywright.simulation.ChannelModel;
import org.dutywright.simulation.Fault;
import org.dutywright.simulation.Recording;
import org.dutywright.text.MapReader;
import org.dutywright.text.Mark;
import org.dutywright.text.Problems;
import org.dutywright.text.ScalarParser;

/** Reads the entries of {@code faults}: which kind, which channels, when and how often. */
final class FaultText {

    /** Most places of faults in one scenario. */
    private static final int MAX_FAULTS = 10_000;

    private record Place(double from, double to) {}

    private record Placed(Fault fault, Mark mark) {}

    private final Problems problems;
    private final Optional<Recording> recording;
    private final List<ChannelModel> channels;
    private final List<Placed> faults = new ArrayList<>();

    private FaultText(Problems problems, Optional<Recording> recording, List<ChannelModel> channels) {
        this.problems = problems;
        this.recording = recording;
        this.channels = channels;
    }

    static List<Fault> read(
            List<MapReader> maps, Problems problems, Optional<Recording> recording, List<ChannelModel> channels) {
        FaultText text = new FaultText(problems, recording, channels);
        maps.forEach(text::readFault);
        text.checkOverlaps();
        return text.faults.stream().map(Placed::fault).toList();
    }

    private void readFault(MapReader map) {
        Optional<FaultKind> kind =
                map.required("kind", ScalarParser.word(FaultKind.words())).map(FaultKind::of);
        if (kind.isEmpty()) {
            // Which keys it may have depends on the kind.
            return;
        }
        Set<ChannelModel> concerned = concerned(map, kind.get());
        List<Place> places = places(map, kind.get());
        FaultMaker maker = FaultMaker.read(kind.get(), map, problems, recording, List.copyOf(concerned));
        map.finish();
        if (faults.size() + (long) places.size() * concerned.size() > MAX_FAULTS) {
            problems.add(map.mark(), "the scenario has more than " + MAX_FAULTS + " faults; repeat them less often");
            return;
        }
        for (Place place : places) {
            for (ChannelModel channel : concerned) {
                faults.add(new Placed(maker.make(channel, place.from(), place.to()), map.mark()));
            }
        }
    }

    private Set<ChannelModel> concerned(MapReader map, FaultKind kind) {
        ScalarParser<String> known =
                ScalarParser.word(channels.stream().map(ChannelModel::name).toList());
        Set<String> names = new LinkedHashSet<>(map.scalars("channels", known));
        map.optional("channel", known).ifPresent(names::add);
        Set<ChannelModel> concerned = new LinkedHashSet<>();
        if (!map.has("channel") && !map.has("channels")) {
            if (kind.wholeSensor()) {
                concerned.addAll(channels);
            } else {
                problems.add(map.mark(), "a fault of this kind needs the key 'channel' or 'channels'");
            }
        }
        channels.stream().filter(channel -> names.contains(channel.name())).forEach(concerned::add);
        return concerned;
    }

    private List<Place> places(MapReader map, FaultKind kind) {
        List<Place> once = kind.time() == FaultKind.Time.INSTANT ? instants(map) : span(map, kind.time());
        Optional<Double> every = map.optional("every", Scalars.positive(Scalars.seconds()));
        Optional<Long> times = map.optional("times", ScalarParser.whole(1, MAX_FAULTS));
        if (map.has("every") != map.has("times")) {
            map.problemAt(map.has("every") ? "every" : "times", "'every' and 'times' go together");
        }
        if (every.isEmpty() || times.isEmpty()) {
            return once;
        }
        List<Place> repeated = new ArrayList<>();
        for (Place place : once) {
            for (long i = 0; i < times.get(); i++) {
                double later = i * every.get();
                repeated.add(new Place(place.from() + later, place.to() + later));
            }
        }
        Place last = repeated.isEmpty() ? new Place(0, 0) : repeated.getLast();
        if (recording.isPresent() && last.to() > recording.get().endSeconds()) {
            map.problemAt("times", "the last repetition lies behind the end of the recording");
        }
        return repeated;
    }

    private List<Place> instants(MapReader map) {
        if (!map.has("at")) {
            map.required("at", Scalars.seconds());
        }
        List<Place> places = new ArrayList<>();
        for (double at : map.scalars("at", Scalars.seconds())) {
            if (outside(at) || isEnd(at)) {
                map.problemAt("at", "'at' lies outside of the recording, which runs " + range());
            } else {
                places.add(new Place(at, at));
            }
        }
        return places;
    }

    private List<Place> span(MapReader map, FaultKind.Time time) {
        boolean needed = time == FaultKind.Time.SPAN;
        Optional<Double> from =
                needed ? map.required("from", Scalars.seconds()) : map.optional("from", Scalars.seconds());
        Optional<Double> to = needed ? map.required("to", Scalars.seconds()) : map.optional("to", Scalars.seconds());
        boolean incomplete = needed && (from.isEmpty() || to.isEmpty());
        if (recording.isEmpty() || incomplete) {
            return List.of();
        }
        double start = from.orElse(recording.get().startSeconds());
        double end = to.orElse(recording.get().endSeconds());
        if (outside(start)) {
            map.problemAt("from", "'from' lies outside of the recording, which runs " + range());
            return List.of();
        }
        if (outside(end)) {
            map.problemAt("to", "'to' lies outside of the recording, which runs " + range());
            return List.of();
        }
        if (start >= end) {
            map.problemAt(map.has("to") ? "to" : "from", "'to' must come after 'from'");
            return List.of();
        }
        return List.of(new Place(start, end));
    }

    private boolean outside(double seconds) {
        return recording.isPresent()
                && (seconds < recording.get().startSeconds()
                        || seconds > recording.get().endSeconds());
    }

    private boolean isEnd(double seconds) {
        return recording.isPresent() && seconds == recording.get().endSeconds();
    }

    private String range() {
        Recording known = recording.orElseThrow();
        return "from " + known.startSeconds() + " s to " + known.endSeconds() + " s";
    }

    /** A sensor cannot lose its supply while it has none, nor can a spike begin in a spike. */
    private void checkOverlaps() {
        for (ChannelModel channel : channels) {
            checkOverlaps(channel, Fault.SupplyLoss.class);
            checkOverlaps(channel, Fault.ExtraPulse.class);
        }
    }

    private void checkOverlaps(ChannelModel channel, Class<? extends Fault> kind) {
        List<Placed> sorted = faults.stream()
                .filter(placed -> kind.isInstance(placed.fault())
                        && placed.fault().channel().equals(channel.name()))
                .sorted(Comparator.comparingDouble(placed -> placed.fault().startSeconds()))
                .toList();
        for (int i = 1; i < sorted.size(); i++) {
            Fault before = sorted.get(i - 1).fault();
            double over = before instanceof Fault.SupplyLoss loss ? loss.firstEdgeSeconds() : before.endSeconds();
            if (sorted.get(i).fault().startSeconds() < over) {
                problems.add(
                        sorted.get(i).mark(),
                        "this fault of " + channel.name() + " begins before another of its kind is over");
            }
        }
    }
}
