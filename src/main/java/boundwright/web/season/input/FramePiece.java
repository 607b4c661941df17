package boundwright.web.season.input;

import boundwright.store.season.SeasonDraft;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Name, days and parts of the year. */
final class FramePiece implements Piece {
  private static final Pattern SHOWN = Pattern.compile("name|first|last|periods\\[\\d+](\\.(from|part))?");
  private static final List<String> OWN = List.of("name", "first", "last", "periods");

  @Override
  public String name() {
    return "days";
  }

  @Override
  public String title(SeasonDraft draft, String at) {
    return "Days of the season";
  }

  @Override
  public Map<String, String> fields(SeasonDraft draft, String at) {
    ObjectNode own = draft.root().deepCopy();
    own.retain(OWN);
    return FieldTree.fields(own);
  }

  @Override
  public String put(SeasonDraft draft, String at, ObjectNode typed) {
    draft.root().remove(OWN);
    draft.root().setAll(typed);
    return "";
  }

  @Override
  public Pattern shown() {
    return SHOWN;
  }

  @Override
  public String beside() {
    return "last";
  }
}
