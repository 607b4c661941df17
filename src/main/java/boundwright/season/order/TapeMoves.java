package boundwright.season.order;

import boundwright.season.order.RunningOrder.Go;
import boundwright.season.order.RunningOrder.Lay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * When each tape is laid and by whom. A mark has its tape from before its first rep until its last rep has landed; then that tape moves to the
 * mark that is wanted next, between two reps, while the runway is free and the sand is raked. So each place lays as many tapes as it has marks.
 */
final class TapeMoves {
  private final SessionAsk ask;
  private final List<Go> goes;
  private final Hands hands;

  TapeMoves(SessionAsk ask, List<Go> goes, Hands hands) {
    this.ask = ask;
    this.goes = goes;
    this.hands = hands;
  }

  private record Use(double mark, int first, int landed) {}

  List<Lay> all() {
    List<Lay> out = new ArrayList<>();
    for (Place place : ask.places()) {
      out.addAll(at(place));
    }
    out.sort(Comparator.comparingInt(Lay::time_s));
    return out;
  }

  private List<Lay> at(Place place) {
    List<Go> here = goes.stream().filter(g -> g.place().equals(place.name())).toList();
    Map<Double, Use> uses = new LinkedHashMap<>();
    for (Go g : here) {
      if (g.mark_m() != null) {
        uses.merge(g.mark_m(), new Use(g.mark_m(), g.start_s(), g.landing_s()), (a, b) -> new Use(a.mark, a.first, Math.max(a.landed, b.landed)));
      }
    }
    List<Lay> out = new ArrayList<>();
    Map<Double, Integer> lying = new HashMap<>();
    for (Use use : uses.values()) {
      // everybody who started before has landed by then
      int free = here.stream().filter(g -> g.start_s() < use.first).mapToInt(Go::landing_s).max().orElse(0);
      Double from =
          free >= use.first
              ? null
              : lying.entrySet().stream()
                  .filter(e -> e.getValue() <= free)
                  .map(Map.Entry::getKey)
                  .min(Comparator.comparingDouble(m -> Math.abs(m - use.mark)))
                  .orElse(null);
      if (from != null) {
        lying.remove(from);
      }
      lying.put(use.mark, use.landed);
      int time = from == null ? 0 : free;
      out.add(new Lay(time, place.name(), from, use.mark, by(here, time, use.first)));
    }
    return out;
  }

  /** Somebody who rests, else whoever is at the sand; before the first rep the one whose turn comes last, so that nobody hurries. */
  private @Nullable String by(List<Go> here, int time, int until) {
    if (time == 0) {
      if (!ask.helpers().isEmpty()) {
        return ask.helpers().get(0);
      }
      Map<String, Integer> first = new LinkedHashMap<>();
      here.forEach(g -> first.putIfAbsent(g.name(), g.start_s()));
      return first.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey).orElse(null);
    }
    Integer found = hands.take(null, time, Math.max(time + 1, until));
    if (found != null) {
      return hands.name(found);
    }
    String beside = null;
    for (Go g : here) {
      if (g.landing_s() <= time && g.clear_s() > time && g.measures() != null) {
        beside = g.measures();
      }
    }
    return beside;
  }
}
