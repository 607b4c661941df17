package boundwright.season.chance;

import boundwright.athlete.Surface;
import boundwright.footfall.Foot;
import boundwright.load.account.Work;
import boundwright.readiness.DrillFamily;
import boundwright.season.Block;
import boundwright.season.Member;
import boundwright.season.Session;
import boundwright.season.SessionKind;
import boundwright.season.Venue;
import boundwright.season.ladder.DrawnClimb;
import boundwright.season.year.Menu;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * A planned session in the sizes in which it can be done, set by set as in the plan's own choices, and what is done in its place by an
 * athlete who works from fewer steps than planned: bounding holds series on one leg again below six steps, and full jumps below six are
 * combinations.
 */
final class PlannedWork {
  private static final int SIX = 6;
  /** Least sizes, as in the plan's own choices. */
  private static final int LEAST_BOUNDS = 2;

  private static final int LEAST_COMBINATIONS = 3;
  private static final int LEAST_JUMPS = 4;

  final Session session;
  final SessionKind kind;
  /** Number of the place; -1 for a meet. */
  final int venue;
  private final Sizes usual;
  private final Sizes below;
  private final DrillFamily asks;
  private final int asked;

  /**
   * The sizes of a session.
   *
   * @param all largest first
   * @param planned place of the one that was planned
   */
  record Sizes(List<Drills> all, int planned) {
    Sizes {
      all = List.copyOf(all);
    }

    Drills asPlanned() {
      return all.get(planned);
    }
  }

  /**
   * Of a day.
   *
   * @param steps approach steps of the plan on the day, by family
   * @param may whether the limits would let a larger session be, whatever was before
   */
  PlannedWork(Session session, Member m, Map<DrillFamily, Integer> steps, List<Venue> venues, RepWeights weights, Predicate<Session> may) {
    this.session = session;
    this.kind = session.kind();
    this.venue = number(venues, session.venue());
    boolean jumps = kind == SessionKind.JUMPS;
    boolean noSeries = kind == SessionKind.BOUNDS && steps.getOrDefault(DrillFamily.SINGLE_LEG, 0) >= SIX;
    this.asks = jumps ? DrillFamily.COMBINATION : DrillFamily.SINGLE_LEG;
    this.asked = noSeries || jumps ? SIX : 0;
    Menu menu = new Menu(steps, m.fullSteps(), m.athlete().takeOffFoot());
    this.usual = sizes(sized(menu, kind, session), weights, may);
    this.below = asked == 0 ? usual : sizes(instead(m, steps, jumps), weights, may);
  }

  static int number(List<Venue> venues, @Nullable String key) {
    for (int v = 0; v < venues.size(); v++) {
      if (Objects.equals(venues.get(v).key(), key)) {
        return v;
      }
    }
    return -1;
  }

  /** A session in other sizes: units of the plan's own choices, the planned one among them. */
  private record Sized(int least, int planned, IntFunction<Session> make) {
    Session of(int units) {
      return make.apply(units);
    }
  }

  private Sized sized(Menu menu, SessionKind of, Session like) {
    String place = like.venue() == null ? "" : like.venue();
    Surface surface = like.blocks().isEmpty() ? Surface.GRASS : like.blocks().get(0).work().surface();
    for (Foot lead : Foot.values()) {
      Sized made =
          switch (of) {
            case BOUNDS -> new Sized(LEAST_BOUNDS, like.contacts() / Menu.BOUNDS_UNIT, n -> menu.bounds(place, surface, n, lead));
            case COMBINATIONS -> new Sized(LEAST_COMBINATIONS, like.contacts() / Menu.COMBINATIONS_UNIT, n -> menu.combinations(place, surface, n, lead));
            case JUMPS -> new Sized(LEAST_JUMPS, like.contacts() / 3, n -> menu.jumps(place, surface, n));
            case TEST, MEET -> new Sized(1, 1, n -> like);
          };
      if (made.planned() >= made.least() && made.of(made.planned()).equals(like)) {
        return made;
      }
    }
    return byHand(like);
  }

  /** A session that the coach made: tenths of it, each drill in as many reps as come nearest from below, at least one. */
  private static Sized byHand(Session like) {
    return new Sized(
        2, 10,
        n -> {
          List<Block> out = new ArrayList<>();
          for (Block b : like.blocks()) {
            Work w = b.work();
            int reps = Math.max(1, w.reps() * n / 10);
            out.add(new Block(new Work(w.sequence(), reps, w.approachSteps(), w.surface(), w.kind(), w.measured()), Math.min(reps, b.sets()), b.inSand()));
          }
          return n == 10 ? like : new Session(like.kind(), like.venue(), out);
        });
  }

  private Sized instead(Member m, Map<DrillFamily, Integer> planned, boolean jumps) {
    Map<DrillFamily, Integer> steps = new EnumMap<>(planned);
    // series are given below six steps only
    steps.merge(DrillFamily.SINGLE_LEG, SIX - 1, Math::min);
    String place = session.venue() == null ? "" : session.venue();
    Surface surface = session.blocks().isEmpty() ? Surface.GRASS : session.blocks().get(0).work().surface();
    Menu menu = new Menu(steps, m.fullSteps(), m.athlete().takeOffFoot());
    return jumps
        ? new Sized(LEAST_COMBINATIONS, Math.max(LEAST_COMBINATIONS, session.contacts() / Menu.COMBINATIONS_UNIT), n -> menu.combinations(place, surface, n, Foot.RIGHT))
        : new Sized(LEAST_BOUNDS, Math.max(LEAST_BOUNDS, session.contacts() / Menu.BOUNDS_UNIT), n -> menu.bounds(place, surface, n, Foot.RIGHT));
  }

  private static Sizes sizes(Sized sized, RepWeights weights, Predicate<Session> may) {
    List<Drills> out = new ArrayList<>();
    int largest = sized.planned();
    while (sized.planned() > 1 && largest < sized.planned() * 3 / 2 && may.test(sized.of(largest + 1))) {
      largest++;
    }
    for (int n = largest; n >= Math.min(sized.least(), sized.planned()); n--) {
      out.add(new Drills(sized.of(n).blocks(), weights));
    }
    return new Sizes(out, largest - sized.planned());
  }

  /** Whether the athlete works from too few steps for what was planned. */
  private boolean instead(DrawnClimb climb) {
    return climb.steps(asks) < asked;
  }

  /** The sizes for an athlete who has climbed so far. */
  Sizes sizes(DrawnClimb climb) {
    return instead(climb) ? below : usual;
  }

  /** The sizes on a day to come: those of the plan, but where the athlete is late already. */
  Sizes expected(DrawnClimb climb) {
    return climb.expected(asks) < asked ? below : usual;
  }

  /** Whether the athlete does exactly what was planned, if nothing is taken away. */
  boolean asPlanned(DrawnClimb climb) {
    return !instead(climb) && usual.asPlanned().asPlanned(climb);
  }

  /**
   * By how many sizes it is smaller if it has at most a share of its contacts; -1 if no size will do.
   *
   * @param share of the contacts planned
   * @param below a hard day, if it must be none, or null
   */
  int smaller(double share, Drills.@Nullable HardFrom below) {
    List<Drills> all = usual.all();
    for (int i = usual.planned(); i < all.size(); i++) {
      boolean hard = below != null && (all.get(i).contacts >= below.contacts() || session.steps() >= below.steps());
      if (all.get(i).contacts <= share * all.get(usual.planned()).contacts && !hard) {
        return i - usual.planned();
      }
    }
    return -1;
  }

  /** What is done, as a session; {@code where} may be another place than planned. */
  Session as(DrawnClimb climb, Drills drills, List<Venue> venues, int where) {
    if (drills == usual.asPlanned() && where == venue && asPlanned(climb)) {
      return session;
    }
    Surface surface = where < 0 ? Surface.TRACK : venues.get(where).surface();
    SessionKind done = kind == SessionKind.JUMPS && instead(climb) ? SessionKind.COMBINATIONS : kind;
    return new Session(done, where < 0 ? null : venues.get(where).key(), drills.blocks(climb, surface));
  }
}
