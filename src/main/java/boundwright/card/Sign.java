package boundwright.card;

import boundwright.athlete.Surface;
import boundwright.load.Answer;
import boundwright.load.DayVerdict;
import boundwright.runway.CoachSettings;
import boundwright.runway.Drill;
import boundwright.runway.MarkAdvice;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What must be known before taping, as a sign in the squad's table: the sentence stands once, in the legend, for all whom it concerns. */
enum Sign {
  /** The load of the day is not simply allowed. */
  CAUTION("!", "load: caution"),
  /** The load of the day is refused. */
  REFUSED("!!", "load: refused"),
  /** Nothing was logged from these steps. */
  UNTRIED("\u2020", "nothing logged from these steps: watch the first rep from the side"),
  /** No run-up of this athlete was measured. */
  GUESSED_START("\u2021", "start is a guess: measure one run-up"),
  /** All reps were made on another surface. */
  ELSEWHERE("\u00a7", "no rep on today's surface yet"),
  /** The runway, the sand or the level ground is too short. */
  TOO_SHORT("#", "too long for this place: fewer contacts or steps"),
  /** Something else that stands on the athlete's own card. */
  MORE("+", "more on the athlete's card");

  private final String sign;
  private final String means;

  Sign(String sign, String means) {
    this.sign = sign;
    this.means = means;
  }

  /** The sign and what it means. */
  String legend() {
    return sign + " " + means;
  }

  /** Some of them, one after the other. */
  static String written(Set<Sign> signs) {
    return signs.stream().map(s -> s.sign).collect(Collectors.joining(" "));
  }

  /** What the load says of an athlete's day. */
  static Set<Sign> of(@Nullable DayVerdict day) {
    EnumSet<Sign> out = EnumSet.noneOf(Sign.class);
    if (day != null && day.answer() != Answer.ALLOWED) {
      out.add(day.answer() == Answer.REFUSED ? REFUSED : CAUTION);
    }
    return out;
  }

  /** What an advice warns of. A warning that has no sign of its own is told by {@link #MORE}, so that none is lost. */
  static Set<Sign> of(MarkAdvice advice, Drill drill, CoachSettings settings) {
    EnumSet<Sign> out = EnumSet.noneOf(Sign.class);
    int told = 0;
    if (advice.forecast().extrapolated()) {
      out.add(UNTRIED);
      told++;
    }
    if (advice.forecast().approachSteps() > 0 && advice.startMeasured() == 0) {
      out.add(GUESSED_START);
      told++;
    }
    if (advice.elsewhere() != null) {
      out.add(ELSEWHERE);
      told++;
    }
    if (drill.inSand()) {
      told += advice.window() == null ? 1 : 0; // the cell itself says that the mark is unsure
      boolean runway = advice.runwayNeeded_m() > settings.facility().runway_m();
      boolean sand = advice.forecast().landing().p95() - advice.markToSand_m() > settings.facility().pit_m();
      told += (runway ? 1 : 0) + (sand ? 1 : 0);
      if (runway || sand) {
        out.add(TOO_SHORT);
      }
    } else if (advice.groundNeeded_m() > settings.facility().flat_m()) {
      out.add(TOO_SHORT);
      told++;
    }
    told += settings.facility().surface() == Surface.CONCRETE ? 1 : 0; // said once below the table
    if (SessionCards.warnings(advice, drill, settings).size() > told) {
      out.add(MORE);
    }
    return out;
  }
}
