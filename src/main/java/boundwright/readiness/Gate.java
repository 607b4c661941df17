package boundwright.readiness;

import boundwright.athlete.Athlete;
import boundwright.evidence.Source;
import boundwright.evidence.Standing;
import boundwright.footfall.Routine;
import boundwright.quantity.Estimate;
import boundwright.quantity.Notes;
import boundwright.readiness.Evidence.Name;
import boundwright.readiness.Evidence.State;
import boundwright.readiness.GateAnswer.Decision;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The gate to the next rung: may this athlete add speed? It asks for all of {@link Evidence.Name}; one that is not there
 * is enough to stay, one that the log cannot tell holds nobody back and is said. Every measure is built so that making it
 * worse (a clean rep turned faulty, the last landing of a day shorter, flights from here shorter or from two steps less
 * longer, a shorter stay, more pain) can never turn <em>stay</em> into <em>add</em>. Back is told only after a clear loss.
 */
public final class Gate {
  /** Where the progression comes from. */
  public static final Source LADDER =
      new Source("ladder", "Add two steps only when the present speed is mastered", "common practice", Standing.COMMON_PRACTICE);

  /** Where the numbers come from. */
  public static final Source RULES =
      new Source("gate", "How many clean reps, days and weeks are asked for", "first guess of the makers, whole seasons simulated",
          Standing.JUDGEMENT);

  /** All sources of the evidence, for a list of them. */
  public static final List<Source> SOURCES =
      List.of(LADDER, RULES, CleanNeed.SOURCE, CleanLoss.SOURCE, LegLoading.SOURCE, TimeHere.SOURCE, SameDayGain.SOURCE, Fade.SOURCE);

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
  private static final int LOOK_AHEAD = 60;
  private static final int REPS_A_DAY = 6;
  private static final GateRep IMAGINED = new GateRep(LocalDate.EPOCH, true, Double.NaN);

  private final GateRules rules;
  private final CleanNeed need;

  /** A gate that asks for {@code rules}. */
  public Gate(GateRules rules) {
    this.rules = rules;
    this.need = new CleanNeed(rules.clean());
  }

  /** Answers. */
  public GateAnswer answer(GateCase c) {
    List<GateRep> window = c.reps().stream().filter(r -> r.date().isAfter(c.today().minusDays(rules.days()))).toList();
    List<LookedDay> days = LookedDay.of(window);
    List<Evidence> evidence = new ArrayList<>(clean(days));
    evidence.add(timeHere(c));
    evidence.add(speedUsed(c.speed(), c.rung()));
    evidence.add(noFading(days));
    evidence.add(new Evidence(Name.LOAD, c.load().said(), "not refused, no leg on its way back", !c.load().refused(), c.load().source()));
    evidence.add(
        new Evidence(Name.NO_PAIN, c.load().painSaid(), "allowed by the pain limits in the last seven days", !c.load().pain(), c.load().painSource()));
    boolean all = evidence.stream().allMatch(Evidence::met);
    int top = Routine.RUNGS.get(Routine.RUNGS.size() - 1);
    if (all && c.rung() < top) {
      return new GateAnswer(c.family(), c.rung(), Decision.ADD_TWO_STEPS, "All that is asked is there: go to " + (c.rung() + 2) + " steps."
          + notKnown(evidence), 0, 0, evidence);
    }
    CleanLoss loss = CleanLoss.of(c.reps(), rules.loss());
    if (c.rung() > 0 && (loss.clear(rules) || loss.loadsLegs(rules.loss()))) {
      return new GateAnswer(c.family(), c.rung(), Decision.GO_BACK, whyBack(loss, c.rung()), 0, 0, evidence);
    }
    if (all) {
      return new GateAnswer(
          c.family(), c.rung(), Decision.STAY, top + " steps is the longest here; longer belongs to the full run-up.", 0, 0, evidence);
    }
    return stay(c, days, evidence);
  }

  private List<Evidence> clean(List<LookedDay> looked) {
    GateRules.Clean r = rules.clean();
    CleanCount count = CleanCount.of(looked, need);
    int reps = reps(looked);
    int days = goodDays(looked);
    String needed =
        count.needed() > count.reps()
            ? "more reps: at least " + need.fewest() + ", all clean"
            : "at least " + count.needed() + " of " + count.reps() + "; a true share of " + percent(r.notShare()) + " gets there in "
                + percent(r.stayError()) + " of stays at most";
    return List.of(
        new Evidence(Name.LOOKED_AT, reps + " reps in " + r.days() + " days", "at least " + r.reps(), reps >= r.reps(), RULES),
        new Evidence(Name.CLEAN,
            count.clean() + " of " + count.reps() + " in the last " + Notes.counted(count.sessions(), "session"), needed, count.met(), CleanNeed.SOURCE),
        new Evidence(Name.GOOD_DAYS,
            Notes.counted(days, "day") + " with " + r.passDayReps() + " reps or more, " + percent(r.passDayShare()) + " of them clean",
            "at least " + r.passDays(), days >= r.passDays(), RULES));
  }

  private boolean cleanEnough(List<LookedDay> looked) {
    return reps(looked) >= rules.clean().reps() && CleanCount.of(looked, need).met() && goodDays(looked) >= rules.clean().passDays();
  }

  private static int reps(List<LookedDay> looked) {
    return looked.stream().mapToInt(LookedDay::size).sum();
  }

  private int goodDays(List<LookedDay> looked) {
    return (int) looked.stream().filter(d -> d.good(rules.clean())).count();
  }

  private static Evidence timeHere(GateCase c) {
    TimeHere t = c.time();
    String value =
        t.why() == TimeHere.Why.KNOWN
            ? "known to this athlete"
            : Notes.counted(t.days(), "day") + (t.why() == TimeHere.Why.NEW ? ", new to this athlete" : " since the break");
    return new Evidence(Name.TIME_HERE, value, t.needed() == 0 ? "nothing" : "at least " + Notes.counted(t.needed(), "day"), t.met(), TimeHere.SOURCE);
  }

  private Evidence speedUsed(@Nullable SpeedUse speed, int rung) {
    if (speed == null) {
      return new Evidence(Name.SPEED_USED, "from standing nothing is compared", "nothing", State.THERE, LADDER);
    }
    String needed = "flights longer than " + Athlete.fromSteps(rung - 2) + ", or not known yet";
    Estimate gain = speed.perFlight();
    String found =
        gain == null
            ? ""
            : String.format(Locale.ROOT, "%+.0f cm a flight (%+.0f to %+.0f) on %s", 100 * gain.p50(), 100 * gain.p05(), 100 * gain.p95(),
                Notes.counted(speed.days(), "day"));
    return switch (speed.told()) {
      case USED -> new Evidence(Name.SPEED_USED, found, needed, State.THERE, SameDayGain.SOURCE);
      case NOT_USED ->
          new Evidence(Name.SPEED_USED, found + ": not worth the speed", needed + String.format(Locale.ROOT, "; worth it from %.0f cm",
              100 * rules.speed().leastGain()), State.NOT_THERE, SameDayGain.SOURCE);
      case NOT_KNOWN ->
          new Evidence(Name.SPEED_USED, (found.isEmpty() ? "" : found + ": ") + "not known yet. Measure three reps " + Athlete.fromSteps(rung) + " and three "
              + Athlete.fromSteps(rung - 2) + " in turn on the same day", needed, State.NOT_KNOWN, SameDayGain.SOURCE);
    };
  }

  /** Within a day landings must not shrink; where lengths are few, the later reps must stay clean. */
  private Evidence noFading(List<LookedDay> looked) {
    List<LookedDay> newest = LookedDay.newest(looked, rules.clean().sessions());
    Fade fade = Fade.of(newest);
    GateRules.Fading r = rules.fading();
    if (fade.known()) {
      boolean shrinks = fade.shrinks(r);
      return new Evidence(Name.NO_FADING,
          String.format(Locale.ROOT, "%+.1f %% over ten reps, %s", 100 * fade.overTenReps(), shrinks ? "beyond scatter" : "within scatter or what is allowed"),
          "not clearly more than " + percent(r.most()) + " shorter", !shrinks, Fade.SOURCE);
    }
    List<GateRep> late = newest.stream().flatMap(d -> d.reps().subList(d.size() / 2, d.size()).stream()).toList();
    double share = late.isEmpty() ? 0 : late.stream().filter(GateRep::clean).count() / (double) late.size();
    return new Evidence(Name.NO_FADING, late.isEmpty() ? "no rep looked at yet" : percent(share) + " of the later reps of each day clean",
        "at least " + percent(r.lateShare()) + " (lengths are too few to tell)", !late.isEmpty() && share >= r.lateShare(), RULES);
  }

  private String whyBack(CleanLoss loss, int rung) {
    String to = " Go back to " + (rung == 2 ? "standing" : rung - 2 + " steps") + ".";
    if (loss.loadsLegs(rules.loss())) {
      return loss.legFaulty() + " of the last " + loss.legReps() + " reps " + Athlete.fromSteps(rung) + " with a fault that loads a leg." + to;
    }
    return loss.recentClean() + " of the last " + loss.recent() + " reps clean " + Athlete.fromSteps(rung) + "; before, " + loss.earlierClean() + " of "
        + loss.earlier() + ". That is more than luck." + to;
  }

  private GateAnswer stay(GateCase c, List<LookedDay> looked, List<Evidence> evidence) {
    int[] missing = missing(looked);
    List<String> why = new ArrayList<>();
    if (missing[0] > 0) {
      why.add("Missing: " + Notes.counted(missing[0], "clean rep") + " on " + missing[1] + (missing[1] == 1 ? " more day." : " more days."));
    } else if (missing[0] < 0) {
      why.add("Missing: more than " + LOOK_AHEAD + " clean reps; work on the faults first.");
    }
    for (Evidence e : evidence) {
      if (e.met() || (e.name().compareTo(Name.TIME_HERE) < 0)) {
        continue;
      }
      if (e.name() == Name.TIME_HERE) {
        why.add("Not before " + DAY.format(c.time().over(c.today())) + ": " + e.needed() + " " + Athlete.fromSteps(c.rung()) + " first.");
      } else if (e.name() != Name.NO_FADING || missing[0] == 0) {
        why.add("Not there: " + e.name().label() + " (" + e.value() + ").");
      }
    }
    return new GateAnswer(
        c.family(), c.rung(), Decision.STAY, String.join(" ", why), Math.max(0, missing[0]), Math.max(0, missing[1]), evidence);
  }

  /** Fewest clean reps, six a day on days to come, after which the clean evidence would be met: {reps, days}; -1 if too many. */
  private int[] missing(List<LookedDay> looked) {
    List<LookedDay> ahead = new ArrayList<>(looked);
    for (int reps = 0; reps <= LOOK_AHEAD; reps++) {
      if (reps > 0) {
        int today = (reps - 1) % REPS_A_DAY + 1;
        if (today > 1) {
          ahead.remove(ahead.size() - 1);
        }
        ahead.add(new LookedDay(Collections.nCopies(today, IMAGINED), today));
      }
      if (cleanEnough(ahead)) {
        return new int[] {reps, (reps + REPS_A_DAY - 1) / REPS_A_DAY};
      }
    }
    return new int[] {-1, -1};
  }

  private static String notKnown(List<Evidence> evidence) {
    String names = evidence.stream().filter(e -> e.state() == State.NOT_KNOWN).map(e -> e.name().label()).collect(Collectors.joining(", "));
    return names.isEmpty() ? "" : " Not known yet: " + names + ".";
  }

  private static String percent(double share) {
    return Math.round(100 * share) + " %";
  }
}
