package boundwright.phone;

import boundwright.athlete.Athlete;
import boundwright.athlete.Facility;
import boundwright.athlete.KnownMark;
import boundwright.athlete.Level;
import boundwright.athlete.MeasuredRunUp;
import boundwright.athlete.Profile;
import boundwright.athlete.Surface;
import boundwright.athlete.growth.FastGrowth;
import boundwright.flight.FlightModel;
import boundwright.flight.Forecast;
import boundwright.flight.Outcome;
import boundwright.flight.Rep;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.Answer;
import boundwright.load.Finding;
import boundwright.load.GuardOverride;
import boundwright.load.GuardSettings;
import boundwright.load.LegCare;
import boundwright.load.Season;
import boundwright.load.account.ContactTimes.Timed;
import boundwright.load.account.DayLoad;
import boundwright.load.account.History;
import boundwright.load.account.LastWeek;
import boundwright.load.account.OtherWork;
import boundwright.load.account.VerticalSpeeds;
import boundwright.load.account.Work;
import boundwright.load.back.LegBack;
import boundwright.load.back.Stages;
import boundwright.phone.Parcel.Kept;
import boundwright.phone.Parcel.Part;
import boundwright.quantity.LengthUnit;
import boundwright.runway.CoachSettings;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.runway.MarkSettings;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;

/** Invented days at invented places, all of one seed: a squad with a past, a plan, and what a thumb could tap. */
final class RandomDay {
  static final LocalDate DAY = LocalDate.of(2026, 5, 12);
  private static final String[] SEQUENCES = {"R", "RRL", "RL x5", "LR x5", "R x6", "L x6", "RRLL RRLL RR", "RRL x2", "LLR x3", "RL x12", "RRL x5"};
  private static final Instant NOON = Instant.parse("2026-05-12T12:00:00Z");

  private final Random random;
  private final Parcel parcel;
  private final List<Entry> tapped = new ArrayList<>();

  RandomDay(long seed) {
    this.random = new Random(seed);
    Surface surface = one(Surface.values());
    CoachSettings settings =
        new CoachSettings(
            one(LengthUnit.values()),
            new MarkSettings(0.5 + 0.01 * random.nextInt(50), 0.05 * random.nextInt(10), 0.05 * random.nextInt(10)),
            new Facility("Saltmarsh, invented & \u00e4", 20 + random.nextInt(40), 5 + random.nextInt(8), 20 + random.nextInt(80), surface),
            10);
    List<Drill> drills = new ArrayList<>();
    for (int i = random.nextInt(6); i > 0; i--) {
      drills.add(
          new Drill(Sequence.parse(one(SEQUENCES)), random.nextBoolean() ? null : (Integer) random.nextInt(13), 1 + random.nextInt(3),
              1 + random.nextInt(4), random.nextInt(4) > 0));
    }
    DayPlan plan = new DayPlan("Invented day", drills);
    List<Part> parts = new ArrayList<>();
    for (int i = 1; i <= 3 + random.nextInt(3); i++) {
      parts.add(part(i, plan, surface));
    }
    this.parcel = new Parcel(DAY, ZoneOffset.ofHours(2), NOON, settings, GuardSettings.DEFAULT, plan, parts);
  }

  Parcel parcel() {
    return parcel;
  }

  private <T> T one(T[] all) {
    return all[random.nextInt(all.length)];
  }

  private Part part(long id, DayPlan plan, Surface surface) {
    Athlete athlete = new Athlete(id, "Invented " + id, one(Level.values()), one(Foot.values()), random.nextInt(13));
    List<KnownMark> marks = new ArrayList<>();
    if (random.nextBoolean()) {
      marks.add(new KnownMark(0, KnownMark.Kind.STANDING_FIVE, 0, 8 + 4 * random.nextDouble(), DAY.minusDays(30), random.nextBoolean()));
    }
    List<MeasuredRunUp> runUps = new ArrayList<>();
    if (random.nextBoolean()) {
      int steps = 1 + random.nextInt(12);
      runUps.add(new MeasuredRunUp(0, steps, steps * (1.2 + 0.5 * random.nextDouble()), random.nextBoolean() ? (Double) (3 + 3 * random.nextDouble()) : null, DAY.minusDays(20)));
    }
    Profile profile = new Profile(athlete, marks, runUps);
    FlightModel base = FlightModel.prior(profile);
    List<DayLoad> days = new ArrayList<>();
    int past = random.nextInt(4) * random.nextInt(3);
    for (int d = past; d > 0; d--) {
      LocalDate date = DAY.minusDays(4L * d);
      List<Rep> reps = new ArrayList<>();
      for (int r = random.nextInt(8); r > 0; r--) {
        Rep rep = rep(base, id, date, Sequence.parse(one(SEQUENCES)), 2 * random.nextInt(6), surface);
        base = base.learn(rep);
        reps.add(rep);
      }
      List<OtherWork> other = random.nextBoolean() ? List.of() : List.of(new OtherWork(0, id, date, OtherWork.Kind.SPORT, 45, 6.5));
      List<Work> work = new ArrayList<>(DayLoad.byDay(reps).stream().flatMap(l -> l.work().stream()).toList());
      if (random.nextInt(3) == 0) {
        work.add(Work.jump(Work.Kind.FULL_JUMP, Foot.LEFT, 14, Surface.TRACK, List.of(new VerticalSpeeds(1.1, 2.2), new VerticalSpeeds(2, 1.9), new VerticalSpeeds(2.3, 2.7))));
      }
      if (!work.isEmpty() || !other.isEmpty()) {
        days.add(new DayLoad(date, work, other));
      }
    }
    List<Kept> kept = new ArrayList<>();
    FlightModel now = base;
    for (int r = random.nextInt(4); r > 0; r--) {
      Rep rep = rep(now, id, DAY, Sequence.parse(one(SEQUENCES)), 2 * random.nextInt(6), surface).withId(100 * id + 10 - r);
      now = now.learn(rep);
      kept.add(new Kept(rep, random.nextBoolean() ? token() : null));
    }
    LocalDate first = days.isEmpty() ? null : days.get(0).date();
    History history = new History(days, first, random.nextBoolean() ? new LastWeek(DAY.minusDays(9), 10 * random.nextInt(20)) : null);
    List<Integer> steps = plan.drills().isEmpty() ? List.of(athlete.rung()) : plan.drills().stream().map(d -> d.stepsFor(athlete.rung())).toList();
    DayLoad other = random.nextInt(3) > 0 ? new DayLoad(DAY, List.of()) : new DayLoad(DAY, List.of(Work.runThrough(Foot.LEFT, 12, Surface.TRACK)), List.of(new OtherWork(0, id, DAY, OtherWork.Kind.BOXES, 20, 0.4)));
    List<Timed> timed = random.nextInt(3) > 0 ? List.of() : List.of(new Timed(4, 0.21), new Timed(6, 0.1777));
    List<GuardOverride> overrides = random.nextInt(3) > 0 ? List.of() : List.of(new GuardOverride(0, id, DAY, Finding.Rule.SURFACE, Answer.CAUTION, "", "invented reason"));
    FlightModel before = base.reps() > 0 && base.reps() < 3 ? FlightModel.prior(profile) : null;
    return new Part(profile, steps, before, base, kept, List.of(), care(), history, other, random.nextBoolean() ? null : one(Season.values()), timed, overrides);
  }

  private LegCare care() {
    List<LegCare.Pain> pains = new ArrayList<>();
    if (random.nextInt(3) == 0) {
      pains.add(new LegCare.Pain(0, DAY.minusDays(random.nextInt(10)), "left shin", random.nextInt(7), random.nextBoolean() ? null : (Boolean) random.nextBoolean(), random.nextInt(6) == 0));
    }
    List<LegCare.MedicalHold> holds = new ArrayList<>();
    if (random.nextInt(6) == 0) {
      holds.add(new LegCare.MedicalHold(0, DAY.minusDays(3), "", null, null));
    }
    FastGrowth fast =
        random.nextInt(3) > 0 ? null : new FastGrowth(random.nextBoolean(), DAY.minusWeeks(random.nextInt(40)), 7.25, 5.75, 8.75, DAY.minusWeeks(2), 7);
    List<LegBack> backs = new ArrayList<>();
    if (random.nextInt(3) == 0) {
      Foot leg = random.nextBoolean() ? Foot.RIGHT : Foot.LEFT;
      backs.add(new LegBack(leg, DAY.minusDays(20), null, new Stages(0.3, 0.15), 40 + 100 * random.nextDouble(), random.nextInt(9), DAY.minusDays(5), DAY, null));
    }
    return new LegCare(random.nextInt(3) == 0, random.nextBoolean() ? null : DAY.minusDays(100), pains, holds, backs, fast);
  }

  /** A rep as it could have come: taps near the edge, tapes to every foot, broken off. */
  private Rep rep(FlightModel model, long id, LocalDate date, Sequence sequence, int steps, Surface surface) {
    Forecast f = model.forecast(sequence, steps, surface, date);
    int n = sequence.size();
    double mark = cm(Math.max(0, (f.mean(n) + f.mean(n + 1)) / 2 + 0.3 * random.nextGaussian()));
    double landing = f.mean(n + 1) + f.sd(n + 1) * Math.max(-1.5, Math.min(1.5, random.nextGaussian()));
    int kind = random.nextInt(4);
    if (kind == 0) {
      return new Rep(0, id, date, sequence, steps, surface, List.of(), null, Outcome.ABANDONED, random.nextBoolean() ? null : (Integer) (1 + random.nextInt(n)), mark, random.nextBoolean(), List.of());
    }
    if (kind == 1) {
      List<Double> prints = new ArrayList<>();
      double before = 0;
      for (int c = 2; c <= n; c++) {
        before = Math.max(before + 0.3, cm(f.mean(c) * (landing / f.mean(n + 1))));
        prints.add(random.nextInt(5) == 0 && c < n ? Double.NaN : before);
      }
      return new Rep(0, id, date, sequence, steps, surface, prints, cm(Math.max(before + 0.3, landing)), null, null, random.nextBoolean() ? null : (Double) mark, false, List.of());
    }
    Outcome tap = landing < mark ? Outcome.SHORT : random.nextInt(6) == 0 ? Outcome.LATE : Outcome.IN;
    return new Rep(0, id, date, sequence, steps, surface, List.of(), null, tap, null, mark, random.nextBoolean(), random.nextInt(4) == 0 ? List.of("knee-up@1") : List.of());
  }

  private static double cm(double metres) {
    return Math.round(metres * 100) / 100.0;
  }

  private String token() {
    byte[] bytes = new byte[16];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  private long someone() {
    return 1L + random.nextInt(parcel.parts().size());
  }

  /** What is tapped next on the phone as it stands: a rep mostly; sometimes undo, hand over, a look, the same again, or nonsense. */
  String tap(RunwayDay phone) {
    int kind = random.nextInt(12);
    long who = someone();
    long at = NOON.toEpochMilli() + 60_000L * tapped.size();
    RunwayCard.Done done = null;
    if (kind < 5) {
      List<RunwayCard.Done> all = phone.card(who, parcel.plan().drills().isEmpty() ? 0 : 1).done();
      done = all.isEmpty() ? null : all.get(random.nextInt(all.size()));
    }
    if (kind == 5 && !tapped.isEmpty()) {
      return tapped.get(random.nextInt(tapped.size())).line();
    }
    if (kind == 6) {
      return random.nextBoolean() ? "kind=REP&token=" + token() + "&athleteId=1&atMs=1&sequence=QQ%" : "kind=UNDO&token=" + token() + "&athleteId=" + who + "&atMs=" + at + "&of=999999";
    }
    Entry e;
    if (done != null && kind < 2) {
      e = new Entry(token(), Entry.Kind.UNDO, who, at, 3_600_000, null, done.of(), 0, false, List.of());
    } else if (done != null && kind < 4) {
      long to = who % parcel.parts().size() + 1;
      e = new Entry(token(), Entry.Kind.HAND, who, at, -5, null, done.of(), to, false, List.of());
    } else if (done != null) {
      e = new Entry(token(), Entry.Kind.LOOK, who, at, 0, null, done.of(), 0, true, List.of("low-knee", "pops-up@2"));
    } else {
      Part part = parcel.parts().get((int) who - 1);
      List<Drill> drills = parcel.plan().drills();
      int drill = drills.isEmpty() ? 0 : random.nextInt(drills.size());
      Sequence sequence = drills.isEmpty() ? Sequence.parse("RRL x2") : drills.get(drill).sequence();
      Rep r = rep(part.base(), who, DAY, sequence, part.steps().get(drill), parcel.settings().facility().surface());
      e =
          new Entry(token(), Entry.Kind.REP, who, at, 0,
              new Entry.Did(r.sequence(), r.approachSteps(), r.surface(), r.outcome(), r.markToSand_m(), r.landing_m(), r.footprints_m(), r.brokeOffAfter()),
              "", 0, r.judged(), r.faults());
    }
    tapped.add(e);
    return e.line();
  }

  /** Lines of all that was tapped, in order. */
  List<String> lines() {
    return tapped.stream().map(Entry::line).toList();
  }
}
