package boundwright.load.account;

import boundwright.athlete.Surface;
import boundwright.flight.Projectile;
import boundwright.footfall.Flight;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.load.account.Work.Kind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.hipparchus.util.FastMath;

/**
 * The weight of a contact: {@code (F / F0)^m}, F its mean force by impulse ({@link ContactForce}), F0 that of a bound from standing
 * once the athlete is under way, m the scale's power. The unit is the standing-bound contact.
 *
 * <p>Vertical speeds are those of a usual athlete, the same for everybody and from any run-up, unless a jump was measured: out of a
 * contact {@value #BOUND_UP} m/s for a bound, {@value #HOP_UP} for a hop, {@value #JUMP_UP} for the last jump, into the next contact the
 * same, {@value #FIRST_DOWN} into the first (judgement; the worked chain of a full jump has 2.4, 1.9 and 2.2). So the account of a past
 * week stays what it was when flights are learned, and doing more never leaves more room. An athlete's size falls out, because the
 * unit is a standing bound of the same athlete. A run-through's contact at the board is weighed as the take-off of a hop, the careful
 * reading. A sprint step is {@code (t flight + t contact) / t contact} (impulse over one step; .12 and .11 s, judgement). Landing from
 * a box: {@code v = sqrt(2 g h)} down, up again as for a bound, shared by two legs.
 */
public final class ContactWeights {
  private static final double BOUND_UP = 1.8;
  private static final double HOP_UP = 2.1;
  private static final double JUMP_UP = 2.2;
  private static final double FIRST_DOWN = 0.3;
  private static final Sequence ALTERNATE = Sequence.parse("RL x5");
  private static final double SPRINT_STEP_M = 2.0;
  private static final double SPRINT_AIR_S = 0.12;
  private static final double SPRINT_CONTACT_S = 0.11;
  private static final int MOST_KEPT = 4000;

  private final LoadScale scale;
  private final double standing;
  private final Map<Shape, List<Double>> ratios = new ConcurrentHashMap<>();
  private final Map<Shape, Map<Double, LegLoad>> rep = new ConcurrentHashMap<>();

  /** Weighs on this scale. */
  public ContactWeights(LoadScale scale) {
    this.scale = scale;
    this.standing = force(new VerticalSpeeds(BOUND_UP, BOUND_UP), scale.times().bounding(0));
  }

  /** Contacts that are weighed alike. */
  private record Shape(List<Foot> contacts, int steps, boolean atTheBoard, List<VerticalSpeeds> measured) {}

  /** The scale. */
  public LoadScale scale() {
    return scale;
  }

  /** Mean force of a standing bound over body weight. */
  public double standingBound() {
    return standing;
  }

  /** Force of each contact over that of a standing bound, in order; for a run-through one. */
  public List<Double> overStanding(Work work) {
    if (ratios.size() > MOST_KEPT) {
      ratios.clear();
    }
    return ratios.computeIfAbsent(shape(work), k -> ratios(work));
  }

  private static Shape shape(Work work) {
    return new Shape(work.sequence().contacts(), work.approachSteps(), work.atTheBoard(), work.measured());
  }

  private List<Double> ratios(Work work) {
    int steps = work.approachSteps();
    boolean runThrough = work.kind() == Kind.RUN_THROUGH;
    Sequence whole = runThrough ? Sequence.of(List.of(Foot.RIGHT, Foot.RIGHT, Foot.LEFT)) : work.sequence();
    List<VerticalSpeeds> speeds = work.measured().isEmpty() ? usual(whole) : work.measured();
    List<Double> out = new ArrayList<>();
    for (Flight f : whole.flights()) {
      if (out.size() < work.sequence().size()) {
        double time = work.atTheBoard() ? scale.times().jump(steps, f.kind()) : scale.times().bounding(steps);
        out.add(force(speeds.get(f.order() - 1), time) / standing);
      }
    }
    return List.copyOf(out);
  }

  private static List<VerticalSpeeds> usual(Sequence sequence) {
    List<VerticalSpeeds> out = new ArrayList<>();
    double down = FIRST_DOWN;
    for (Flight f : sequence.flights()) {
      double up =
          switch (f.kind()) {
            case HOP -> HOP_UP;
            case BOUND -> BOUND_UP;
            case JUMP -> JUMP_UP;
          };
      out.add(new VerticalSpeeds(down, up));
      down = up;
    }
    return out;
  }

  private static double force(VerticalSpeeds v, double time) {
    return ContactForce.meanOverBodyWeight(v.down(), v.up(), time);
  }

  /** Work weighed with a power, 4 to 9. */
  public LegLoad of(Work work, double power) {
    return times(once(work), work, power);
  }

  /** One rep by the power it was weighed with. */
  private Map<Double, LegLoad> once(Work work) {
    if (rep.size() > MOST_KEPT) {
      rep.clear();
    }
    return rep.computeIfAbsent(shape(work), k -> new ConcurrentHashMap<>());
  }

  private LegLoad times(Map<Double, LegLoad> once, Work work, double power) {
    LegLoad one = once.computeIfAbsent(power, p -> one(work, p));
    int n = work.reps();
    return new LegLoad(one.jumps() * n, one.right() * n, one.left() * n, one.rightUnits() * n, one.leftUnits() * n);
  }

  private LegLoad one(Work work, double power) {
    List<Double> over = overStanding(work);
    double right = 0;
    double left = 0;
    for (int i = 0; i < over.size(); i++) {
      double weight = FastMath.pow(over.get(i), power);
      if (work.sequence().contacts().get(i) == Foot.RIGHT) {
        right += weight;
      } else {
        left += weight;
      }
    }
    Sequence s = work.sequence();
    return new LegLoad(s.size(), s.count(Foot.RIGHT), s.count(Foot.LEFT), right, left);
  }

  /** Other work weighed with a power, 4 to 9; but for bounds the same for both legs. */
  public LegLoad of(OtherWork work, double power) {
    double each =
        switch (work.kind()) {
          case BOUNDS -> bound((int) work.grade(), power);
          case SPRINT -> work.amount() / SPRINT_STEP_M / 2 * FastMath.pow(sprintStep(), power);
          case WEIGHTS -> work.amount() * scale.setUnits();
          case BOXES -> work.amount() * FastMath.pow(boxLanding(work.grade()), power);
          case SPORT -> work.amount() / 60 * work.grade() / 10 * scale.sportUnits();
        };
    int right = work.jumpContacts(Foot.RIGHT);
    int left = work.jumpContacts(Foot.LEFT);
    return work.kind() == OtherWork.Kind.BOUNDS
        ? new LegLoad(work.jumpContacts(), right, left, right * each, left * each)
        : new LegLoad(work.jumpContacts(), right, left, each, each);
  }

  private double sprintStep() {
    return (SPRINT_AIR_S + SPRINT_CONTACT_S) / SPRINT_CONTACT_S / standing;
  }

  private double boxLanding(double height_m) {
    double down = Math.min(6, Math.sqrt(2 * Projectile.G * height_m));
    return force(new VerticalSpeeds(down, BOUND_UP), scale.times().bounding(0)) / 2 / standing;
  }

  /** A day weighed with a power, 4 to 9. */
  public LegLoad of(DayLoad day, double power) {
    return of(day, List.of(power)).get(0);
  }

  /** A day weighed with each of some powers, 4 to 9, in their order. */
  public List<LegLoad> of(DayLoad day, List<Double> powers) {
    LegLoad[] sums = new LegLoad[powers.size()];
    Arrays.fill(sums, LegLoad.NONE);
    for (Work w : day.work()) {
      Map<Double, LegLoad> once = once(w);
      for (int i = 0; i < sums.length; i++) {
        sums[i] = sums[i].plus(times(once, w, powers.get(i)));
      }
    }
    for (OtherWork o : day.other()) {
      for (int i = 0; i < sums.length; i++) {
        sums[i] = sums[i].plus(of(o, powers.get(i)));
      }
    }
    return List.of(sums);
  }

  /** A day weighed with the scale's own power. */
  public LegLoad of(DayLoad day) {
    return of(day, scale.power());
  }

  /** What one contact of alternate bounds weighs from so many steps, taken over ten. */
  public double bound(int steps, double power) {
    return of(new Work(ALTERNATE, 1, steps, Surface.TRACK), power).units() / ALTERNATE.size();
  }
}
