package boundwright.readiness;

import boundwright.athlete.Athlete;
import boundwright.athlete.Changes;
import boundwright.athlete.KeptAnswers;
import boundwright.flight.Rep;
import boundwright.flight.RepStore;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.load.LoadDesk;
import boundwright.load.Verdict;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntBiFunction;

/** Where each athlete stands on the ladder, what the gate answers, and who needs the coach today. */
public final class LadderDesk {
  private final RepStore reps;
  private final LoadDesk load;
  private final LadderRepository ladder;
  private final Clock clock;
  private final KeptAnswers<LocalDate, Line> lines;

  /** Works on these, and keeps nothing. */
  public LadderDesk(RepStore reps, LoadDesk load, LadderRepository ladder, Clock clock) {
    this(reps, load, ladder, clock, Changes.UNKNOWN);
  }

  /** As {@link #LadderDesk(RepStore, LoadDesk, LadderRepository, Clock)}; {@code changes} says how long the squad's lines are kept. */
  public LadderDesk(RepStore reps, LoadDesk load, LadderRepository ladder, Clock clock, Changes changes) {
    this.lines = new KeptAnswers<>(changes);
    this.reps = reps;
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
    return answers(athlete, LoadDesk.of(load.days(List.of(athlete)), athlete));
  }

  private List<GateAnswer> answers(Athlete athlete, DayVerdict day) {
    LoadAnswer today = LoadAnswer.of(day.soFar(), day.back());
    LocalDate date = LocalDate.now(clock);
    GateRules rules = ladder.rules();
    Gate gate = new Gate(rules);
    List<Rep> log = reps.since(athlete.id(), date.minusDays(GateCase.LOOK_BACK_DAYS));
    Map<DrillFamily, Integer> rungs = ladder.rungs(athlete.id());
    List<GateAnswer> out = new ArrayList<>();
    for (DrillFamily family : DrillFamily.values()) {
      int rung = rungs.getOrDefault(family, athlete.rung());
      out.add(gate.answer(GateCase.of(log, family, rung, athlete.rung(), today, rules, date)));
    }
    return out;
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
   * @param day the one verdict of their day; what they need is told by its first half, so far
   * @param answers of the gate, by family
   */
  public record Line(Athlete athlete, Need need, DayVerdict day, List<GateAnswer> answers) {}

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
    List<Line> out = new ArrayList<>(lines.of(athletes, LocalDate.now(clock), this::lines).values());
    out.sort(Comparator.comparing(Line::need).thenComparing(l -> l.athlete().name()));
    return out;
  }

  private Map<Long, Line> lines(List<Athlete> athletes) {
    Map<Long, Line> out = new LinkedHashMap<>();
    Map<Long, DayVerdict> days = load.days(athletes);
    for (Athlete a : athletes) {
      DayVerdict day = LoadDesk.of(days, a);
      List<GateAnswer> answers = answers(a, day);
      out.put(a.id(), new Line(a, need(day.soFar(), answers), day, answers));
    }
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
