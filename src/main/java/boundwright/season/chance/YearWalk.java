package boundwright.season.chance;

import boundwright.readiness.DrillFamily;
import boundwright.season.PlannedDay;
import boundwright.season.SeasonInput;
import boundwright.season.SessionKind;
import boundwright.season.ladder.ClimbCourse;
import boundwright.season.ladder.DrawnClimb;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One athlete walked through simulated seasons, day by day. What happened is fixed; the quick step of the mend keeps each planned session as
 * it is wherever the limits allow it after what really was done, else as much of it as they allow, else rest. Looked at ahead are the meets
 * of the next six days and the taper, whose limits are known by then; rest is refused by no limit, so the rest of the season always has a
 * plan without a refusal. Mutable, for one thread.
 */
final class YearWalk {
  private static final int WEEK = 7;

  private final SeasonInput input;
  private final PlannedYear year;
  private final LoadRun loads;
  private final DrawnClimb climb;
  private final Tapers tapers;
  private final QuickStep quick;
  /** What is to be done on each day of this season: the plan, and what an hour more adds. */
  private final @Nullable PlannedWork[] work;
  private final Drills.Done now = new Drills.Done();
  private final Learning.Needed[][] needed = new Learning.Needed[DrillFamily.values().length][];
  private final Learning learning;
  private final double share;
  private final double awayADay;
  private final double awayDays;
  private final @Nullable ExtraHour extra;
  private final DayLog log;
  private final long[] room = new long[LoadRun.PARTS];
  private int sinceHard;
  /** Whether the days ahead have to be looked at. */
  private boolean disturbed;
  private @Nullable List<PlannedDay> record;

  YearWalk(SeasonInput input, PlannedYear year, Learning learning, double share, WhatIf.@Nullable MoreHours more) {
    this.input = input;
    this.year = year;
    this.learning = learning;
    this.share = share;
    this.awayADay = input.rules().unplanned().awayPerYear() / 365.25;
    this.awayDays = input.rules().unplanned().awayDays();
    this.loads = year.loads();
    this.climb = year.climb();
    this.tapers = new Tapers(year, loads);
    this.work = new PlannedWork[year.days];
    this.quick = new QuickStep(year, work, loads, climb, tapers);
    this.log = new DayLog(year);
    this.extra = more == null ? null : new ExtraHour(more, year, input, tapers, quick, work);
  }

  /** Has the next seasons written down as days of a plan; null for no longer. */
  void record(@Nullable List<PlannedDay> days) {
    record = days;
  }

  /** Walks one season. */
  void walk(World world, Ground ground, SeasonDrawn to, int athlete) {
    long id = year.member.id();
    long comes = world.key(World.What.COMES, id);
    long away = world.key(World.What.AWAY, id);
    long length = world.key(World.What.AWAY_DAYS, id);
    begin(world, id, ground);
    int gone = -1;
    to.load[athlete] = new int[(year.days + WEEK - 1) / WEEK];
    for (int t = 0; t < year.open; t++) {
      to.load[athlete][t / WEEK] += year.doneRight[t] + year.doneLeft[t];
    }
    to.steps[athlete] = new int[Math.max(1, year.mainMeets.length) * needed.length];
    int meet = 0;
    quick.mend(year.open - 1);
    for (int t = year.open; t < year.days; t++) {
      long date = input.first().toEpochDay() + t;
      if (t > gone && World.uniform(away, date) < awayADay) {
        gone = t + length(World.uniform(length, date)) - 1;
      }
      climb.begins(t);
      tapers.begins(t);
      if (meet < year.mainMeets.length && year.mainMeets[meet] == t) {
        steps(to.steps[athlete], meet++);
      }
      boolean there = day(t, t <= gone, World.uniform(comes, date) < share, ground, to, athlete);
      loads.tell(t, now.right, now.left);
      log.tell(t, now);
      sinceHard = now.hard ? 0 : sinceHard;
      to.load[athlete][t / WEEK] += now.right + now.left;
      disturbed |= climb.ends(t, there, now.families);
      if (disturbed) {
        quick.mend(t);
        disturbed = false;
      }
      sinceHard++;
    }
    if (year.mainMeets.length == 0) {
      steps(to.steps[athlete], 0);
    }
    to.refused += log.refused();
  }

  private void begin(World world, long id, Ground ground) {
    double lasting = World.uniform(world.key(World.What.LASTING, id), 0);
    long stay = world.key(World.What.STAY, id);
    climb.begin((f, s, spent) -> at(id, f, s).drawn(spent, lasting, World.uniform(stay, 100L * DrawnClimb.bit(f) + s)));
    tapers.begin();
    quick.begin();
    System.arraycopy(year.planned, 0, work, 0, work.length);
    sinceHard = year.sinceHard();
    if (extra != null) {
      extra.begin(ground);
    }
  }

  private Learning.Needed at(long id, DrillFamily f, int steps) {
    int at = ClimbCourse.at(f);
    Learning.Needed[] of = needed[at];
    if (of == null) {
      of = new Learning.Needed[64];
      needed[at] = of;
    }
    Learning.Needed n = of[steps];
    if (n == null) {
      n = learning.at(id, f, steps);
      of[steps] = n;
    }
    return n;
  }

  /** Days of a spell: geometric with the mean of the settings. */
  private int length(double u) {
    return awayDays <= 1 ? 1 : 1 + (int) (Math.log(1 - u) / Math.log(1 - 1 / awayDays));
  }

  private void steps(int[] to, int meet) {
    for (DrillFamily f : DrillFamily.values()) {
      to[meet * needed.length + ClimbCourse.at(f)] = climb.steps(f);
    }
  }

  /** One day; says whether nothing kept the athlete from what was planned. */
  private boolean day(int t, boolean gone, boolean comes, Ground ground, SeasonDrawn to, int athlete) {
    now.clear();
    PlannedWork planned = work[t];
    if (planned == null) {
      return !gone;
    }
    if (planned.kind == SessionKind.MEET) {
      disturbed |= gone;
      to.missed[athlete] += gone ? 1 : 0;
      return !gone && meet(t, planned, to, athlete);
    }
    int more = extra == null ? Ground.NOWHERE : extra.place(t);
    int where = gone || !comes ? Ground.NOWHERE : more >= 0 ? more : ground.place(t, planned);
    if (where == Ground.NOWHERE) {
      to.missed[athlete]++;
      disturbed = true;
      if (extra != null && planned.kind == SessionKind.BOUNDS) {
        extra.missed(t, planned, ground);
      }
      return false;
    }
    climb.comes(t, planned.sizes(climb).asPlanned().families);
    train(t, planned, size(t, planned), where, to, athlete);
    return true;
  }

  /** Does a session in the size chosen; null is rest. */
  private void train(int t, PlannedWork work, @Nullable Drills drills, int where, SeasonDrawn to, int athlete) {
    boolean asPlanned = drills == work.sizes(climb).asPlanned() && where == work.venue && work.asPlanned(climb);
    to.mended[athlete] += asPlanned ? 0 : 1;
    if (drills == null) {
      now.clear();
      return;
    }
    drills.weigh(climb, year.hardFrom, now);
    drills.worked(climb, t);
    to.sessions[athlete]++;
    keep(t, work, drills, where);
  }

  private void keep(int t, PlannedWork work, Drills drills, int where) {
    if (record != null) {
      record.add(new PlannedDay(input.day(t), work.as(climb, drills, input.venues(), where)));
    }
  }

  private boolean meet(int t, PlannedWork work, SeasonDrawn to, int athlete) {
    boolean refused = tapers.tooMuchBefore(t);
    for (int part = 0; part < LoadRun.PARTS; part++) {
      refused |= loads.sum(part, t - 6, t - 1) > loads.most(part, t);
    }
    if (refused) {
      disturbed = true;
      to.meetsGivenUp++;
      to.mended[athlete]++;
      return true;
    }
    Drills meet = work.sizes(climb).asPlanned();
    meet.weigh(climb, year.hardFrom, now);
    now.meet = true;
    to.tapersMissed += tapers.missed(t, now.right + now.left) ? 1 : 0;
    to.sessions[athlete]++;
    keep(t, work, meet, work.venue);
    return true;
  }

  /** The planned size if the limits allow it, else the largest below it that they allow; null for rest. */
  private @Nullable Drills size(int t, PlannedWork work) {
    PlannedWork.Sizes sizes = work.sizes(climb);
    for (int part = 0; part < LoadRun.PARTS; part++) {
      room[part] = allowed(part, t);
    }
    room[0] = Math.min(room[0], tapers.room(t, work.sizes(climb).asPlanned(), climb));
    int from = quick.from(t, sizes);
    for (int i = from; i < sizes.all().size(); i++) {
      Drills d = sizes.all().get(i);
      d.weigh(climb, year.hardFrom, now);
      if (fits() && !(now.hard && sinceHard < year.refuseBelowDays)) {
        disturbed |= i != from;
        return d;
      }
    }
    disturbed |= from < sizes.all().size();
    return null;
  }

  private boolean fits() {
    for (int part = 0; part < LoadRun.PARTS; part++) {
      if (now.load(part) > room[part]) {
        return false;
      }
    }
    return true;
  }

  /** What a day may hold beside its own seven days and those of the meets in the next six. */
  private long allowed(int part, int t) {
    long least = loads.most(part, t) - loads.sum(part, t - 6, t - 1);
    long meets = 0;
    for (int m : year.meets) {
      if (m > t && m < t + WEEK) {
        least = Math.min(least, loads.most(part, m) - loads.sum(part, m - 6, t - 1) - meets);
        meets += year.planned(part, m);
      }
    }
    return least;
  }
}
