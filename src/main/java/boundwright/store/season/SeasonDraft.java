package boundwright.store.season;

import boundwright.load.GuardSettings;
import boundwright.season.SeasonInput;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * The file of a season while a page changes a piece of it. What came of it is read by the file's own reader, so that page, file and command
 * line refuse the same things in the same words.
 */
public final class SeasonDraft {
  private final ObjectNode root;

  /**
   * Of a season as it is.
   *
   * @param facility limits and scale of the load account; only what differs from them stands in the file
   */
  public SeasonDraft(SeasonInput season, GuardSettings facility) {
    this.root = SeasonFile.tree(season, facility);
  }

  /** The whole file, to be changed. */
  public ObjectNode root() {
    return root;
  }

  /** A list of it. */
  public ArrayNode list(String key) {
    return root.withArray(key);
  }

  /**
   * The season that it says now.
   *
   * @throws MisreadException with the place in the file, or another refusal that names the season's days
   */
  public SeasonInput read(GuardSettings facility) {
    return SeasonFile.read(root, facility);
  }
}
