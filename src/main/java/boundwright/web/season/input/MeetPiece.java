package boundwright.web.season.input;

import boundwright.store.season.SeasonDraft;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** A meet, and how important it is to whom. */
final class MeetPiece implements Piece {
  private static final Pattern SHOWN = Pattern.compile("name|date");

  @Override
  public String name() {
    return "meet";
  }

  @Override
  public String title(SeasonDraft draft, String at) {
    return Piece.find(draft.list("meets"), "key", at).map(m -> m.path("name").asText()).orElse("A new meet");
  }

  @Override
  public Map<String, String> fields(SeasonDraft draft, String at) {
    Map<String, String> out = new LinkedHashMap<>(Piece.find(draft.list("meets"), "key", at).map(FieldTree::fields).orElse(Map.of()));
    out.remove("key");
    for (JsonNode athlete : draft.list("squad")) {
      if (athlete instanceof ObjectNode node) {
        Piece.find(node.withArray("meets"), "meet", at).ifPresent(e -> out.put("who." + athlete.path("id").asText(), e.path("importance").asText()));
      }
    }
    return out;
  }

  @Override
  public String put(SeasonDraft draft, String at, ObjectNode typed) {
    ArrayNode meets = draft.list("meets");
    JsonNode who = typed.path("who");
    String everybody = typed.path("everybody").asText("");
    ObjectNode meet = typed.deepCopy();
    meet.remove("who");
    meet.remove("everybody");
    String key = at.isEmpty() ? Piece.newKey(meets, typed.path("name").asText("")) : at;
    meet.put("key", key);
    for (JsonNode athlete : draft.list("squad")) {
      Piece.enter(athlete, key, at.isEmpty() ? everybody : who.path(athlete.path("id").asText()).asText(""));
    }
    return "meets[" + (Piece.put(meets, "key", meet) + 1) + "].";
  }

  @Override
  public void remove(SeasonDraft draft, String at) {
    draft.list("squad").forEach(athlete -> Piece.enter(athlete, at, ""));
    draft.list("meets").remove(Piece.index(draft.list("meets"), "key", at));
  }

  @Override
  public Pattern shown() {
    return SHOWN;
  }

  @Override
  public String beside() {
    return "date";
  }
}
