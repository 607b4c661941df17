package boundwright.web.season.input;

import boundwright.store.season.SeasonDraft;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** The coach's own rules; limits and scale of the load account stay as they are. */
final class RulesPiece implements Piece {
  private static final Pattern SHOWN =
      Pattern.compile(
          "week\\.[a-z -]+\\.[a-zA-Z]+|lighterEvery_weeks|lighterShare|taper(\\.[a-zA-Z]+)?|testEvery_weeks|softDay_contacts|notice_days|spareShare"
              + "|unplanned\\.(grassClosed_share\\.[a-z]+|awayOrHeld_[a-zA-Z]+)");
  private static final List<String> OTHERS = List.of("limits", "scale");

  @Override
  public String name() {
    return "rules";
  }

  @Override
  public String title(SeasonDraft draft, String at) {
    return "Your rules";
  }

  @Override
  public Map<String, String> fields(SeasonDraft draft, String at) {
    ObjectNode own = draft.root().withObjectProperty("rules").deepCopy();
    own.remove(OTHERS);
    return FieldTree.fields(own);
  }

  @Override
  public String put(SeasonDraft draft, String at, ObjectNode typed) {
    ObjectNode rules = draft.root().withObjectProperty("rules");
    rules.retain(OTHERS);
    rules.setAll(typed);
    return "rules.";
  }

  @Override
  public Pattern shown() {
    return SHOWN;
  }
}
