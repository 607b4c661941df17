package boundwright.cli;

import boundwright.season.order.OrderAthlete;
import boundwright.season.order.OrderWords;
import boundwright.season.order.RunningOrder;
import boundwright.season.order.SessionAsk;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What {@code session order --json} prints; field by field in {@code docs/formats-json.md}. */
record OrderAnswer(
    String begins,
    String ends,
    int finish_s,
    int limit_s,
    boolean fits,
    int bound_s,
    int least_s,
    boolean proven,
    int longestWait_s,
    boolean legsLevel,
    List<Rep> reps,
    List<Tape> tapes,
    List<Left> leftOut,
    List<String> said) {
  /** One rep. */
  record Rep(
      String time,
      int start_s,
      int landing_s,
      int clear_s,
      int rested_s,
      String athlete,
      int drill,
      String sequence,
      int set,
      int rep,
      int approachSteps,
      String place,
      int lane,
      @Nullable Double mark_m,
      boolean watched,
      @Nullable String measures) {}

  /** A tape is laid or moved. */
  record Tape(String time, int time_s, String place, @Nullable Double from_m, double to_m, @Nullable String by) {}

  /** What is left out. */
  record Left(String kind, int drill, String sequence, int set, int reps, List<String> athletes) {}

  static OrderAnswer of(SessionAsk ask, RunningOrder order, OrderWords words) {
    List<String> said = new ArrayList<>(List.of(words.ends()));
    said.addAll(words.drops());
    return new OrderAnswer(
        words.minute(0), words.minute(order.finish_s() + 59), order.finish_s(), order.limit_s(), order.fits(), order.bound_s(), order.least_s(),
        order.proven(), order.longestWait_s(), order.level(),
        order.goes().stream()
            .map(
                g ->
                    new Rep(
                        words.second(g.start_s()), g.start_s(), g.landing_s(), g.clear_s(), g.rested_s(), g.name(), g.drill() + 1,
                        ask.drills().get(g.drill()).sequence().text(), g.set(), g.rep(), g.steps(), g.place(), g.lane(),
                        Json.lengthOrNull(g.mark_m()), g.watched(), g.measures()))
            .toList(),
        order.tapes().stream()
            .map(
                l ->
                    new Tape(
                        words.second(l.time_s()), l.time_s(), l.place(), Json.lengthOrNull(l.from_m()), Json.length(l.to_m()), l.by()))
            .toList(),
        order.drops().stream()
            .map(
                d ->
                    new Left(
                        d.kind().name().toLowerCase(Locale.ROOT), d.drill() + 1, ask.drills().get(d.drill()).sequence().text(), d.set(), d.reps(),
                        d.athletes().stream().map(ask.athletes()::get).map(OrderAthlete::name).toList()))
            .toList(),
        said);
  }
}
