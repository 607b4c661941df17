package boundwright.clip.reading;

import boundwright.clip.track.BodyPoint;
import boundwright.clip.track.Spot;
import boundwright.footfall.Foot;

/**
 * Something that the coach put right. Corrections are kept for ever and applied in their order each time the clip is read.
 * A contact is named by a time within it, because its number may change with other corrections.
 */
public sealed interface Correction {
  /**
   * Left and right legs exchanged in the frames from {@code from_s} to {@code to_s}, as shown after the program's own
   * decision.
   *
   * @param from_s first time [s]
   * @param to_s last time [s]
   */
  record ExchangeLegs(double from_s, double to_s) implements Correction {}

  /**
   * A body point placed by hand.
   *
   * @param frame of the track
   * @param point as named after the sides were decided
   * @param picture where it is [px]
   */
  record MovePoint(int frame, BodyPoint point, Spot picture) implements Correction {}

  /**
   * When a contact began.
   *
   * @param contact_s a time within the contact [s]
   * @param touchdown_s [s]
   */
  record Touchdown(double contact_s, double touchdown_s) implements Correction {}

  /**
   * When a contact ended.
   *
   * @param contact_s a time within the contact [s]
   * @param toeOff_s [s]
   */
  record ToeOff(double contact_s, double toeOff_s) implements Correction {}

  /**
   * A contact that the program did not find.
   *
   * @param foot which
   * @param touchdown_s [s]
   * @param toeOff_s [s], later
   */
  record AddContact(Foot foot, double touchdown_s, double toeOff_s) implements Correction {}

  /**
   * A contact that is none.
   *
   * @param contact_s a time within it [s]
   */
  record DropContact(double contact_s) implements Correction {}
}
