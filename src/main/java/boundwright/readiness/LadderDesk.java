package boundwright.readiness;

import boundwright.athlete.Athlete;
import boundwright.athlete.Surface;
import boundwright.flight.FlightModel;
import boundwright.flight.Logbook;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.LoadDesk;
import boundwright.load.Verdict;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntBiFunction;
import org.jspecify.annotations.Nullable;

/** Where each athlete stands on the ladder, what the gate answers, and who needs the coach today. */
public final class LadderDesk {
  private final RepStore reps;
  private final Logbook logbook;
  private final LoadDesk load;
  private final LadderRepository ladder;
  private final Clock clock;

  /** Works on these. */
  public LadderDesk(RepStore reps, Logbook logbook, LoadDesk load, LadderRepository ladder, Clock clock) {
    this.reps = reps;
    this.logbook = logbook;
    this.load = load;
    this.ladder = ladder;
    this.clock = clock;
  }

  /** The rung an athlete works from in a family. */
  public int rung(Athlete athlete, DrillFamily family) {
    return ladder.rungs(athlete.id()).getOrDefault(family, athlete.rung());
  }

  /** The rung of every athlete in every sequence as it is now, read once. */
  public ToIntBiFunction<Athlete, Sequence> rungs() {
    Map<Long, Map<DrillFamily, Integer>> set = ladder.rungs();
    return (athlete, sequence) ->
        set.getOrDefault(athlete.id(), Map.of()).getOrDefault(DrillFamily.of(sequence), athlete.rung());
  }

  /** The gate's answer for every family, in the order of {@link DrillFamily}. */
  public List<GateAnswer> answers(Athlete athlete) {
    LocalDate today = LocalDate.now(clock);
    GateRules rules = ladder.rules();
    Gate gate = new Gate(rules, SequentialTest.USUAL);
    List<Rep> recent = reps.since(athlete.id(), today.minusDays(rules.days() - 1L));
    Map<DrillFamily, Integer> rungs = ladder.rungs(athlete.id());
    FlightModel model = logbook.model(athlete);
    Verdict guard = load.today(athlete, List.of());
    List<GateAnswer> out = new ArrayList<>();
    for (DrillFamily family : DrillFamily.values()) {
      int rung = rungs.getOrDefault(family, athlete.rung());
      List<Rep> here =
          recent.stream().filter(r -> r.approachSteps() == rung && DrillFamily.of(r.sequence()) == family).toList();
      out.add(gate.answer(family, rung, gateReps(here), speed(model, here, rung), guard, today));
    }
    return out;
  }

  /** The judged ones, each landing over the mean of the same drill on the same day. */
  static List<GateRep> gateReps(List<Rep> reps) {
    Map<String, double[]> sums = new HashMap<>();
    for (Rep r : reps) {
      if (r.landing_m() != null) {
        double[] sum = sums.computeIfAbsent(r.date() + r.sequence().letters(), k -> new double[2]);
        sum[0] += r.landing_m();
        sum[1]++;
      }
    }
    List<GateRep> out = new ArrayList<>();
    for (Rep r : reps) {
      if (r.judged()) {
        double[] sum = sums.get(r.date() + r.sequence().letters());
        Double landing = r.landing_m();
        double length = landing == null || sum == null ? Double.NaN : landing / (sum[0] / sum[1]);
        out.add(new GateRep(r.date(), r.faults().isEmpty(), length));
      }
    }
    return out;
  }

  private static @Nullable SpeedUse speed(FlightModel model, List<Rep> here, int rung) {
    if (rung == 0) {
      return null;
    }
    int telling =
        (int)
            here.stream()
                .filter(
                    r ->
                        !r.abandoned()
                            && (r.landing_m() != null
                                || r.footprints_m().stream().anyMatch(f -> !f.isNaN())
                                || (r.outcome() != null && r.markToSand_m() != null)))
                .count();
    if (telling == 0) {
      return new SpeedUse(0, 0, 0);
    }
    Sequence drill = usual(here);
    Surface surface = here.get(here.size() - 1).surface();
    FlightModel.Gain gain = model.gain(drill, Math.max(0, rung - 2), rung, surface);
    return new SpeedUse(gain.perFlight(), gain.chanceLonger(), telling);
  }

  /** The sequence done most often, the newest of equally frequent ones. */
  private static Sequence usual(List<Rep> here) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    here.forEach(r -> counts.merge(r.sequence().letters(), 1, Integer::sum));
    String letters =
        counts.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey).orElseThrow();
    return Sequence.parse(letters);
  }

  /** Moves an athlete on the ladder of a family, or leaves them, with a reason where the gate says otherwise. */
  public void decide(Athlete athlete, DrillFamily family, int to, String reason) {
    GateAnswer gate = answers(athlete).stream().filter(a -> a.family() == family).findFirst().orElseThrow();
    ladder.keep(
        new RungDecision(0, athlete.id(), family, LocalDate.now(clock), gate.rung(), to, gate.decision(), reason));
  }

  /**
   * One line of the squad's view.
   *
   * @param athlete who
   * @param need what they need of the coach today
   * @param guard the guard's verdict
   * @param answers of the gate, by family
   */
  public record Line(Athlete athlete, Need need, Verdict guard, List<GateAnswer> answers) {}

  /** What an athlete needs of the coach, most urgent first. */
  public enum Need {
    /** Held or refused: rest, or see medical staff. */
    REST("should rest"),
    /** Back two steps. */
    GO_BACK("go back two"),
    /** May add speed. */
    READY("ready to add two steps"),
    /** Pain or another caution. */
    WATCH("watch"),
    /** Waiting for reps and days. */
    WAITING("stay");

    private final String label;

    Need(String label) {
      this.label = label;
    }

    /** The need in words. */
    public String label() {
      return label;
    }
  }

  /** The squad, whoever needs the coach today first, then by name. */
  public List<Line> squad(List<Athlete> athletes) {
    List<Line> out = new ArrayList<>();
    for (Athlete a : athletes) {
      Verdict guard = load.today(a, List.of());
      List<GateAnswer> answers = answers(a);
      out.add(new Line(a, need(guard, answers), guard, answers));
    }
    out.sort(Comparator.comparing(Line::need).thenComparing(l -> l.athlete().name()));
    return out;
  }

  private static Need need(Verdict guard, List<GateAnswer> answers) {
    if (guard.answer() == Answer.REFUSED) {
      return Need.REST;
    }
    if (answers.stream().anyMatch(a -> a.decision() == GateAnswer.Decision.GO_BACK)) {
      return Need.GO_BACK;
    }
    if (answers.stream().anyMatch(a -> a.decision() == GateAnswer.Decision.ADD_TWO_STEPS)) {
      return Need.READY;
    }
    return guard.answer() == Answer.CAUTION ? Need.WATCH : Need.WAITING;
  }
}
