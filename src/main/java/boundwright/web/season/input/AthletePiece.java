package boundwright.web.season.input;

import boundwright.store.season.SeasonDraft;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DayOfWeek;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/** An athlete of the season. Number, name, own approach and what was done before stay as they are. */
final class AthletePiece implements Piece {
  private static final Pattern SHOWN =
      Pattern.compile(
          "level|takeOffFoot|approachStepsByFamily\\.[a-z-]+|fullRunUpSteps|firstSession|days|largestWeek_standingBounds|joins|(away|wishes)\\[\\d+](\\.[a-z]+)?");
  private static final List<String> OWN =
      List.of("level", "takeOffFoot", "approachStepsByFamily", "fullRunUpSteps", "growing", "firstSession", "days", "largestWeek_standingBounds", "joins", "away", "wishes");

  @Override
  public String name() {
    return "athlete";
  }

  @Override
  public String title(SeasonDraft draft, String at) {
    return Piece.find(draft.list("squad"), "id", at).map(a -> a.path("name").asText()).orElse("Nobody");
  }

  @Override
  public Map<String, String> fields(SeasonDraft draft, String at) {
    return Piece.find(draft.list("squad"), "id", at).map(AthletePiece::fields).orElse(Map.of());
  }

  private static Map<String, String> fields(ObjectNode athlete) {
    ObjectNode own = athlete.deepCopy();
    own.retain(OWN);
    own.remove("days");
    Map<String, String> out = new LinkedHashMap<>(FieldTree.fields(own));
    for (String family : List.of("alternate", "single-leg", "combination")) {
      out.putIfAbsent("approachStepsByFamily." + family, athlete.path("approachSteps").asText());
    }
    athlete.path("days").forEach(day -> out.put("on." + day.asText(), "on"));
    athlete.path("meets").forEach(e -> out.put("in." + e.path("meet").asText(), e.path("importance").asText()));
    return out;
  }

  @Override
  public String put(SeasonDraft draft, String at, ObjectNode typed) {
    ArrayNode squad = draft.list("squad");
    int place = Piece.index(squad, "id", at);
    if (!(squad.get(place) instanceof ObjectNode athlete)) {
      return "";
    }
    ObjectNode own = typed.deepCopy();
    JsonNode meets = own.path("in");
    JsonNode on = own.path("on");
    own.retain(OWN);
    athlete.remove(OWN);
    athlete.setAll(own);
    ArrayNode days = athlete.putArray("days");
    for (DayOfWeek day : DayOfWeek.values()) {
      String label = day.name().toLowerCase(Locale.ROOT);
      if (on.has(label)) {
        days.add(label);
      }
    }
    draft.list("meets").forEach(m -> Piece.enter(athlete, m.path("key").asText(), meets.path(m.path("key").asText()).asText("")));
    return "squad[" + (place + 1) + "].";
  }

  @Override
  public void remove(SeasonDraft draft, String at) {
    draft.list("squad").remove(Piece.index(draft.list("squad"), "id", at));
  }

  @Override
  public Pattern shown() {
    return SHOWN;
  }

  /** What the fields say is right one by one; only the days of the week can still be none. */
  @Override
  public String beside() {
    return "days";
  }
}
