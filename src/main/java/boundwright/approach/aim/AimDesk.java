package boundwright.approach.aim;

import boundwright.approach.board.BoardGaps;
import boundwright.approach.board.BoardSeen;
import boundwright.approach.board.BoardSpread;
import boundwright.approach.board.GapEntry;
import boundwright.athlete.Athlete;
import boundwright.inference.Normal;
import boundwright.jump.Event;
import boundwright.quantity.Limits;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Says where to aim at the board from what is kept of an athlete's attempts in training and in meets. */
public final class AimDesk {
  /** Fewest attempts at the board, fouls included, from which an aim is told (judgement). */
  public static final int FEWEST_ATTEMPTS = 4;
  /** Fewest of them with a measured gap. */
  public static final int FEWEST_GAPS = 2;
  /** Fewest legal marks. */
  public static final int FEWEST_MARKS = 3;
  /** Only so many of the newest attempts count, since a run-up changes (judgement). */
  public static final int NEWEST = 60;

  private final BoardLog log;

  /** Works on these take-offs. */
  public AimDesk(BoardLog log) {
    this.log = log;
  }

  /** Those in the triple jump, see {@link #seen(Athlete, Event)}. */
  public List<BoardSeen> seen(Athlete athlete) {
    return seen(athlete, Event.TRIPLE_JUMP);
  }

  /** The newest attempts at the board in an event, oldest first: training and meets; passes are left out. */
  public List<BoardSeen> seen(Athlete athlete, Event event) {
    List<BoardSeen> out = new ArrayList<>();
    for (GapEntry g : log.gaps(athlete.id())) {
      if (g.event() == event) {
        out.add(new BoardSeen(g.date(), null, g.gap_m(), g.foul(), g.startShift_m(), g.distance_m()));
      }
    }
    out.addAll(log.inMeets(athlete.id(), event));
    out.sort(Comparator.comparing(BoardSeen::date));
    return List.copyOf(out.subList(Math.max(0, out.size() - NEWEST), out.size()));
  }

  /** Where to aim in the triple jump, see {@link #answer(Athlete, Event, Goal, int)}. */
  public AimAnswer answer(Athlete athlete, @Nullable Goal goal, int attempts) {
    return answer(athlete, Event.TRIPLE_JUMP, goal, attempts);
  }

  /**
   * Where to aim.
   *
   * @param event which jump; the other's attempts tell nothing
   * @param goal what the attempts are for; null for the longest best, no mark counting as the settings say
   * @param attempts 1 to 6
   * @throws RefusedException if the goal is out of reach or the attempts are out of range; never for too few data
   */
  public AimAnswer answer(Athlete athlete, Event event, @Nullable Goal goal, int attempts) {
    Limits.count("Attempts", attempts, 1, 6, "A meet has up to six.");
    Known known = known(athlete, event);
    JumpForm jump = known.jump;
    if (jump == null) {
      return new AimAnswer(known.seen, known.board, known.form, null, null, known.from, known.missing);
    }
    Goal wanted = goal == null ? longest(jump) : goal;
    return new AimAnswer(
        known.seen, known.board, known.form, AimPlan.of(jump, wanted, attempts), AimAdvice.of(known.board, jump, wanted, attempts), known.from, null);
  }

  /** Where the foot falls and how widely, where enough is kept for an aim: without working the aim out. */
  public Optional<BoardSpread> board(Athlete athlete, Event event) {
    Known known = known(athlete, event);
    return known.jump == null ? Optional.empty() : Optional.of(known.board);
  }

  /**
   * The best aim that is kept for all attempts, for the longest best [m]: without the policy from attempt to attempt; empty where the data
   * cannot tell.
   */
  public OptionalDouble fixed_m(Athlete athlete, Event event, int attempts) {
    JumpForm jump = known(athlete, event).jump;
    return jump == null ? OptionalDouble.empty() : OptionalDouble.of(FixedAim.best(jump, longest(jump), attempts).aim_m());
  }

  /** What the log says, without an aim; no form of the jump with a sentence that says why. */
  private record Known(
      List<BoardSeen> seen, BoardSpread board, @Nullable EffectiveForm form, @Nullable JumpForm jump, String from, @Nullable String missing) {}

  private Known known(Athlete athlete, Event event) {
    List<BoardSeen> seen = seen(athlete, event);
    BoardGaps gaps = gaps(seen);
    BoardSpread board = BoardSpread.of(gaps);
    Marks marks = marks(seen, board, event);
    EffectiveForm form = marks.effective_m().isEmpty() ? null : EffectiveForm.of(event, marks.effective_m());
    String from = from(gaps, marks);
    String missing = missing(gaps, marks);
    if (missing != null || form == null) {
      return new Known(seen, board, form, null, from, missing);
    }
    try {
      return new Known(seen, board, form, form.with(board), from, null);
    } catch (RefusedException noForm) {
      // a log so wild that no jumper has such a spread: said, not thrown, since nobody asked for a form
      return new Known(seen, board, form, null, from, noForm.getMessage());
    }
  }

  /** The longest best, no mark counting as the settings say. */
  public Goal.Longest longest(JumpForm form) {
    return new Goal.Longest(form.effectiveMean_m() - log.settings().noMarkBelow_m());
  }

  /** What the attempts say about the board, corrected to the planned start mark. */
  static BoardGaps gaps(List<BoardSeen> seen) {
    List<Double> measured = new ArrayList<>();
    List<Double> fouls = new ArrayList<>();
    for (BoardSeen s : seen) {
      Double at = s.atPlan_m();
      if (s.tells()) {
        if (at == null) {
          fouls.add(-s.startShift_m());
        } else {
          measured.add(at);
        }
      }
    }
    return new BoardGaps(measured, fouls);
  }

  /** Effective distances of the legal attempts; {@code guessed} when the mean legal gap stands in for those measured. */
  private record Marks(List<Double> effective_m, boolean guessed) {}

  private static Marks marks(List<BoardSeen> seen, BoardSpread board, Event event) {
    List<Double> both = new ArrayList<>();
    List<Double> stoodIn = new ArrayList<>();
    double legal = Normal.meanAbove0(board.mean_m().p50(), board.sd_m().p50());
    for (BoardSeen s : seen) {
      Double d = s.distance_m();
      Double gap = s.gap_m();
      if (d != null && !s.foul()) {
        if (gap != null) {
          both.add(Math.min(d + gap, event.most_m()));
        }
        stoodIn.add(Math.min(d + (gap == null ? legal : gap), event.most_m()));
      }
    }
    return both.size() >= FEWEST_MARKS || both.size() == stoodIn.size() ? new Marks(both, false) : new Marks(stoodIn, true);
  }

  private static @Nullable String missing(BoardGaps gaps, Marks marks) {
    if (gaps.attempts() < FEWEST_ATTEMPTS || gaps.measured_m().size() < FEWEST_GAPS) {
      return "An aim needs at least " + FEWEST_ATTEMPTS + " attempts at the board, fouls included, " + FEWEST_GAPS
          + " of them with a measured gap; there are " + gaps.attempts() + " with " + gaps.measured_m().size() + ". Log more.";
    }
    if (marks.effective_m().size() < FEWEST_MARKS) {
      return "An aim needs at least " + FEWEST_MARKS + " legal jumps with their distance; there are " + marks.effective_m().size()
          + ". Enter the distances of more jumps from the full run-up.";
    }
    return null;
  }

  private static String from(BoardGaps gaps, Marks marks) {
    int measured = gaps.measured_m().size();
    int unknown = gaps.foulsBelow_m().size();
    return "From " + Notes.counted(gaps.attempts(), "attempt") + " at the board (" + Notes.counted(measured, "gap") + " measured, "
        + Notes.counted(unknown, "foul") + " of unknown size) and " + Notes.counted(marks.effective_m().size(), "legal distance")
        + (marks.guessed() ? "; where the gap was not measured the usual legal gap stands in, so the spread is a little too wide." : ".");
  }
}
