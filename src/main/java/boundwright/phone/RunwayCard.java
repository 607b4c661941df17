package boundwright.phone;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a phone shows of one athlete and one drill. In the browser an object with the same names; lists are arrays, what is null here is
 * null there.
 *
 * @param athleteId who
 * @param drill of the day's plan, from 1; 0 when nothing is planned
 * @param name of the athlete
 * @param letters of the sequence, {@code RRLRRL}
 * @param sequence as the coach wrote it, for {@link Entry}
 * @param steps approach steps, for {@link Entry}
 * @param surface its name in {@link boundwright.athlete.Surface}, for {@link Entry}
 * @param from {@code from 4 steps}
 * @param inSand whether the last flight ends in sand; otherwise {@link #mark} is the level ground that it takes
 * @param held whether bounding is stopped until licensed medical staff decide; then there is no mark, no start, no strip and no next,
 *     only {@link #reason}
 * @param reason of a stop; or why no mark can be given; else empty
 * @param mark the mark to the sand in its parts, to be set large; empty without one
 * @param mark_m the same [m]; null on the flat or without one
 * @param lay_m where the tape lay for this athlete's last rep of this drill today [m], or null
 * @param open whether marks work with the chance that the coach asks
 * @param works {@code works from 12.91 m to 13.42 m}, or empty
 * @param chance that the rep counts, {@code 72 in 100}; empty on the flat or without a mark
 * @param start length of the run-up in its parts; empty from standing or without a mark
 * @param startSaid {@code from standing}, or how sure the run-up is, {@code ± 18 cm}; empty without a mark
 * @param answer of the load of the day with the plan: {@code allowed}, {@code caution} or {@code refused}
 * @param caution about the load, one line that the coach has not decided otherwise; or empty
 * @param roomLeft what may still be added today, in a line, or empty
 * @param warnings what the coach must know before taping, most important first; not about load
 * @param next what the next rep should add to be learned from, or empty
 * @param first for an athlete of whom no rep is known, how to begin; else empty
 * @param restsOn what the mark rests on and how sure it is; empty without one
 * @param strip the runway for a phone, as SVG; empty without a mark
 * @param stripWide the same for a desk
 * @param repsDone of this drill today
 * @param repsPlanned of this drill; 0 when nothing is planned
 * @param feet the contacts in order, R or L
 * @param done the athlete's reps of today, newest first
 */
public record RunwayCard(
    long athleteId,
    int drill,
    String name,
    String letters,
    String sequence,
    int steps,
    String surface,
    String from,
    boolean inSand,
    boolean held,
    String reason,
    List<Part> mark,
    @Nullable Double mark_m,
    @Nullable Double lay_m,
    boolean open,
    String works,
    String chance,
    List<Part> start,
    String startSaid,
    String answer,
    String caution,
    String roomLeft,
    List<String> warnings,
    String next,
    String first,
    String restsOn,
    String strip,
    String stripWide,
    int repsDone,
    int repsPlanned,
    List<String> feet,
    List<Done> done) {

  /** Takes copies. */
  public RunwayCard {
    mark = List.copyOf(mark);
    start = List.copyOf(start);
    warnings = List.copyOf(warnings);
    feet = List.copyOf(feet);
    done = List.copyOf(done);
  }

  /**
   * A figure and its unit.
   *
   * @param text {@code 9.52}
   * @param small {@code m}
   */
  public record Part(String text, String small) {}

  /**
   * A rep of today.
   *
   * @param of what names it in an {@link Entry}: its token, or its number when it was not tapped on a phone
   * @param letters of its sequence
   * @param steps its approach steps
   * @param said what came of it, {@code in, tape at 9.52 m}
   * @param looked whether the technique was looked at
   * @param faults what was seen wrong
   */
  public record Done(String of, String letters, int steps, String said, boolean looked, List<String> faults) {}
}
