package boundwright.web.season.input;

import boundwright.web.season.input.PieceView.Pick;
import java.util.List;

/**
 * What a season is planned from, on one page.
 *
 * @param season its number
 * @param name of it
 * @param days from when to when
 * @param parts parts of the year, a line each
 * @param meets in order of time
 * @param places as entered
 * @param athletes as entered
 * @param others of the squad who are not in it
 * @param assumed what nobody has said and was assumed, a sentence each
 * @param edition how often it was entered or changed
 * @param stale the newest published version if the season was changed since it was made, else 0
 * @param said what was just done, or empty
 * @param refused why something was not done, or empty
 */
public record InputView(
    long season, String name, String days, List<String> parts, List<Item> meets, List<Item> places, List<Item> athletes, List<Pick> others, List<String> assumed,
    int edition, int stale, String said, String refused) {
  /** Takes copies. */
  public InputView {
    parts = List.copyOf(parts);
    meets = List.copyOf(meets);
    places = List.copyOf(places);
    athletes = List.copyOf(athletes);
    others = List.copyOf(others);
    assumed = List.copyOf(assumed);
  }

  /**
   * Something that has a form of its own.
   *
   * @param at which of its kind
   * @param name as the coach calls it
   * @param more in a few words
   */
  public record Item(String at, String name, String more) {}
}
