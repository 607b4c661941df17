package boundwright.phone;

import java.util.List;

/**
 * The day as it stands on one phone: what the server handed out, and what was tapped since. Not for many threads.
 */
public final class RunwayDay {
  private RunwayDay() {}

  /**
   * Opens what the server handed out.
   *
   * @param parcel as {@link Parcel#text} wrote it
   * @throws boundwright.quantity.RefusedException if it is no such text, or another version's
   */
  public static RunwayDay open(String parcel) {
    throw new UnsupportedOperationException("not yet");
  }

  /**
   * Puts what the server says of one athlete now in place of what it said before, and takes the unsent entries in again: those that the
   * server has already are not counted twice.
   *
   * @param part as {@link Parcel.Part#text} wrote it, or several of them in any order
   * @throws boundwright.quantity.RefusedException if it is no such text, or another version's; then nothing changes
   */
  public void refresh(String part) {
    throw new UnsupportedOperationException("not yet");
  }

  /**
   * Takes all unsent entries in place of those taken before, in order.
   *
   * @param lines of {@link Entry#line}
   * @return those that could not be taken; the others are taken
   */
  public List<Refused> entries(List<String> lines) {
    throw new UnsupportedOperationException("not yet");
  }

  /**
   * Takes one entry more.
   *
   * @return what it did, in a sentence: {@code The mark moved 12 cm back: from 9.40 m to 9.52 m.}
   * @throws boundwright.quantity.RefusedException if it could not be taken; then nothing changes
   */
  public String add(String line) {
    throw new UnsupportedOperationException("not yet");
  }

  /**
   * What is to be shown.
   *
   * @param athleteId who
   * @param drill of the plan, from 1; 0 when nothing is planned
   * @throws boundwright.quantity.RefusedException if there is no such athlete or drill
   */
  public RunwayCard card(long athleteId, int drill) {
    throw new UnsupportedOperationException("not yet");
  }

  /** The athletes in the order in which they were handed out, each with how far the day's drills are. */
  public List<Who> squad() {
    throw new UnsupportedOperationException("not yet");
  }

  /**
   * One athlete of the day.
   *
   * @param athleteId who
   * @param name as called at the track
   * @param held whether bounding is stopped
   * @param drills in order; one, with the number 0, when nothing is planned
   */
  public record Who(long athleteId, String name, boolean held, List<Step> drills) {}

  /**
   * A drill of an athlete.
   *
   * @param drill its number, from 1; 0 when nothing is planned
   * @param letters of the sequence
   * @param from {@code from 4 steps}
   * @param repsDone today
   * @param repsPlanned 0 when nothing is planned
   */
  public record Step(int drill, String letters, String from, int repsDone, int repsPlanned) {}

  /**
   * An entry that could not be taken.
   *
   * @param token of the entry; empty where none could be read
   * @param why in a sentence for the coach
   */
  public record Refused(String token, String why) {}
}
