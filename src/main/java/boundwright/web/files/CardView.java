package boundwright.web.files;

import boundwright.card.SessionCard;

/**
 * A card to print.
 *
 * @param card what is printed
 * @param athlete number of the athlete, or empty for the squad
 */
public record CardView(SessionCard card, String athlete) {
  /** The PDF of this card. */
  public String pdf(String paper) {
    return "/card.pdf?paper=" + paper + (athlete.isEmpty() ? "" : "&athlete=" + athlete);
  }
}
