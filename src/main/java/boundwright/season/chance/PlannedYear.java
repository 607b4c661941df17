package boundwright.season.chance;

import boundwright.load.Answer;
import boundwright.load.Guard;
import boundwright.load.GuardLimits;
import boundwright.load.Season;
import boundwright.load.LegCare;
import boundwright.load.Verdict;
import boundwright.load.account.ContactWeights;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LegLoad;
import boundwright.readiness.DrillFamily;
import boundwright.readiness.GateRules;
import boundwright.season.Away;
import boundwright.season.Climb;
import boundwright.season.Done;
import boundwright.season.Entry;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.ladder.ClimbCourse;
import boundwright.season.ladder.DrawnClimb;
import boundwright.season.ladder.SquadStay;
import boundwright.season.weeks.WantedWeek;
import boundwright.season.year.Choice;
import boundwright.season.year.YearProblem;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/** One athlete's planned season as numbers, with what was done so far: what every simulated season of theirs begins with. */
final class PlannedYear {
  final Member member;
  final int days;
  final int open;
  final @Nullable PlannedWork[] planned;
  final int[] right;
  final int[] left;
  final boolean[] hard;
  final boolean[] away;
  final boolean[] trains;
  /** Parts of the year that the limits tell apart, by day. */
  final Season[] part;
  final int[] meets;
  final int[] mainMeets;
  final int[] missingBounds;
  final int[] missingLoad;
  final YearProblem numbers;
  final ClimbCourse course;
  final Drills.HardFrom hardFrom;
  final int refuseBelowDays;
  final int cautionBelowDays;
  final GuardLimits limits;
  final int[] doneRight;
  final int[] doneLeft;
  final boolean[] doneHard;

  PlannedYear(
      SeasonInput input, Member m, SeasonPlan.Year year, Done done, List<WantedWeek> wanted, List<SquadStay> stays, GateRules.Stay stay, RepWeights weights) {
    this.member = m;
    this.days = input.days();
    this.open = Math.max(0, Math.min(days, input.number(done.today())));
    this.limits = input.rules().guard().limits();
    this.numbers = new YearProblem(input, m, Collections.nCopies(days, List.of(Choice.REST)), wanted, null);
    this.course = new ClimbCourse(input, m, year.climbs(), stays.stream().filter(s -> s.athleteId() == m.id()).toList(), done, stay);
    this.hardFrom = new Drills.HardFrom(limits.hardContacts(), limits.hardSteps());
    this.refuseBelowDays = numbers.refuseBelowDays();
    this.cautionBelowDays = (int) Math.ceil(limits.spacingHours().refuse() / 24);
    this.planned = new PlannedWork[days];
    this.right = new int[days];
    this.left = new int[days];
    this.hard = new boolean[days];
    this.away = new boolean[days];
    this.trains = new boolean[days];
    this.part = new Season[days];
    this.doneRight = new int[open];
    this.doneLeft = new int[open];
    this.doneHard = new boolean[open];
    done(input, done, weights.weights());
    for (int t = 0; t < days; t++) {
      Optional<Away.Why> why = m.away(input.day(t));
      boolean joined = m.joins() == null || !input.day(t).isBefore(m.joins());
      away[t] = why.isPresent() || !joined;
      trains[t] = !away[t] && m.days().contains(input.day(t).getDayOfWeek());
      part[t] = input.period(input.day(t)).season();
    }
    for (PlannedDay d : year.days()) {
      int t = input.number(d.date());
      // who is away by now does not train, whatever was published
      boolean gone = t >= open && t < days && m.away(d.date()).filter(w -> w != Away.Why.SOFT).isPresent();
      if (t >= open && t < days && !gone) {
        plan(input, year, t, d, weights);
      }
    }
    this.meets = meets(input, m, false);
    this.mainMeets = meets(input, m, true);
    this.missingBounds = new int[(days + 6) / 7];
    this.missingLoad = new int[missingBounds.length];
    missing(wanted);
  }

  private void done(SeasonInput input, Done done, ContactWeights weights) {
    for (DayLoad d : done.of(member.id())) {
      int t = input.number(d.date());
      if (t >= 0 && t < open) {
        LegLoad legs = weights.of(d);
        doneRight[t] += (int) Math.round(100 * legs.rightUnits());
        doneLeft[t] += (int) Math.round(100 * legs.leftUnits());
        doneHard[t] |= d.hard(limits.hardContacts(), limits.hardSteps());
      }
    }
  }

  private void plan(SeasonInput input, SeasonPlan.Year year, int t, PlannedDay d, RepWeights weights) {
    Map<DrillFamily, Integer> steps = new EnumMap<>(DrillFamily.class);
    year.climbs().forEach((Climb c) -> steps.put(c.family(), c.stepsOn(d.date())));
    DayLoad load = d.session().on(d.date());
    planned[t] = new PlannedWork(d.session(), member, steps, input.venues(), weights, larger(input, d, weights.weights()));
    LegLoad legs = weights.weights().of(load);
    right[t] = (int) Math.round(100 * legs.rightUnits());
    left[t] = (int) Math.round(100 * legs.leftUnits());
    hard[t] = load.hard(limits.hardContacts(), limits.hardSteps());
  }

  /** Whether the limits would let a larger session be whatever was before: no caution more, and nothing hard or long where it was not. */
  private Predicate<Session> larger(SeasonInput input, PlannedDay d, ContactWeights weights) {
    LocalDate first = member.firstSession() != null ? member.firstSession() : member.past().first();
    LegCare care = new LegCare(member.growing(), member.growing() && first == null ? d.date() : first, List.of(), List.of());
    Guard.AthleteDay judge = new Guard(limits, input.period(d.date()).season(), weights).on(member.athlete().level(), care, History.NONE, d.date());
    DayLoad planned = d.session().on(d.date());
    long cautions = cautions(judge.judge(planned));
    boolean wasHard = planned.hard(limits.hardContacts(), limits.hardSteps());
    boolean soft = member.away(d.date()).isPresent();
    return s -> {
      DayLoad load = s.on(d.date());
      boolean allowed = !soft && (wasHard || !load.hard(limits.hardContacts(), limits.hardSteps()));
      return allowed && cautions(judge.judge(load)) <= cautions;
    };
  }

  private static long cautions(Verdict v) {
    return v.answer() == Answer.REFUSED ? Long.MAX_VALUE : v.findings().stream().filter(f -> f.answer() == Answer.CAUTION).count();
  }

  private int[] meets(SeasonInput input, Member m, boolean main) {
    List<Integer> out = new ArrayList<>();
    for (Meet meet : input.meets()) {
      int t = input.number(meet.date());
      PlannedWork work = planned[t];
      boolean jumps = work != null && work.kind == SessionKind.MEET;
      if (jumps && (!main || m.entry(meet).filter(i -> i == Entry.Importance.MAIN).isPresent())) {
        out.add(t);
      }
    }
    return out.stream().distinct().mapToInt(Integer::intValue).sorted().toArray();
  }

  /** By how many sessions of bounding, and by how much load, the plan stays below what is wanted of each week. */
  private void missing(List<WantedWeek> wanted) {
    for (int w = 0; w < missingBounds.length; w++) {
      int bounds = 0;
      int load = 0;
      for (int t = 7 * w; t < Math.min(days, 7 * w + 7); t++) {
        PlannedWork work = planned[t];
        bounds += work != null && work.kind == SessionKind.BOUNDS ? 1 : 0;
        load += right[t] + left[t];
      }
      missingBounds[w] = 7 * w < open ? 0 : Math.max(0, wanted.get(w).sessions(SessionKind.BOUNDS) - bounds);
      missingLoad[w] = Math.max(0, (int) Math.round(100 * wanted.get(w).units()) - load);
    }
  }

  /** Planned load of a day, of a part [1/100 standing-bound contact]. */
  int planned(int partOf, int t) {
    return partOf == 0 ? right[t] + left[t] : partOf == 1 ? right[t] : left[t];
  }

  /** Days since the last hard session before the first open day. */
  int sinceHard() {
    for (int ago = 1; ago <= open; ago++) {
      if (doneHard[open - ago]) {
        return ago;
      }
    }
    return open + numbers.sinceHardBefore(0);
  }

  /** A climb to be walked, at its beginning in each season. */
  DrawnClimb climb() {
    return new DrawnClimb(course);
  }

  /** Running sums of loads, with what was before and what is over. */
  LoadRun loads() {
    LoadRun out = new LoadRun(numbers, limits);
    for (int t = 0; t < open; t++) {
      out.tell(t, doneRight[t], doneLeft[t]);
    }
    return out;
  }
}
