package boundwright.web.season.input;

import boundwright.store.season.SeasonDraft;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** A place where one can train. */
final class PlacePiece implements Piece {
  private static final Pattern SHOWN = Pattern.compile("name|surface|athletesAtOnce|hours\\.[a-z]+|closed\\[\\d+](\\.(from|to))?");

  @Override
  public String name() {
    return "place";
  }

  @Override
  public String title(SeasonDraft draft, String at) {
    return Piece.find(draft.list("places"), "key", at).map(p -> p.path("name").asText()).orElse("A new place");
  }

  @Override
  public Map<String, String> fields(SeasonDraft draft, String at) {
    Map<String, String> out = new LinkedHashMap<>(Piece.find(draft.list("places"), "key", at).map(FieldTree::fields).orElse(Map.of()));
    out.remove("key");
    return out;
  }

  @Override
  public String put(SeasonDraft draft, String at, ObjectNode typed) {
    ArrayNode places = draft.list("places");
    ObjectNode place = typed.deepCopy();
    place.put("key", at.isEmpty() ? Piece.newKey(places, typed.path("name").asText("")) : at);
    return "places[" + (Piece.put(places, "key", place) + 1) + "].";
  }

  @Override
  public void remove(SeasonDraft draft, String at) {
    draft.list("places").remove(Piece.index(draft.list("places"), "key", at));
  }

  @Override
  public Pattern shown() {
    return SHOWN;
  }
}
