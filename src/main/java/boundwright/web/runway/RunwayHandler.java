package boundwright.web.runway;

import boundwright.phone.ParcelPieces;
import boundwright.store.Workbench;
import boundwright.web.page.Assets;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The runway page, and what passes between it and here: all that a phone must know, and what was tapped on it. */
public final class RunwayHandler {
  /** Made when somebody asks: four hundred classes that the first page does not need. */
  private static final class Mapper {
    static final ObjectMapper JSON = new ObjectMapper();
  }

  /** Shorter answers fit into one packet as they are [bytes]. */
  private static final int LEAST_PACKED = 1400;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Assets assets;
  private final RunwayNews news;

  public RunwayHandler(Workbench bench, Pages pages, Gate gate, Assets assets) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
    this.assets = assets;
    this.news = new RunwayNews(bench);
  }

  /** The page. */
  public void show(Context ctx) {
    RunwayView view = new RunwayView(assets.href("phone.js"), Assets.RUNWAY.stream().map(assets::href).toList());
    pages.show(ctx, 200, "runway/runway", "Runway", "runway", view);
  }

  /**
   * What a phone must know to go on alone. With {@code have}, the hashes that it has ({@code head:1f0c,12:99ab}), only the athletes that
   * changed; the whole squad where something else did.
   */
  public void parcel(Context ctx) {
    RunwayNews.Squad squad = news.squad();
    Map<String, String> have = have(Form.text(ctx, "have"));
    if (squad.head().equals(have.get("head"))) {
      Answer told = told(ctx);
      parts(told, squad.all().stream().filter(o -> !o.hash().equals(have.get(String.valueOf(o.id())))).toList(), true);
      send(ctx, told.add("}"));
    } else {
      send(ctx, whole(told(ctx), squad).add("}"));
    }
  }

  /** The squad in one text; the text of each athlete is in that of the squad. */
  private static Answer whole(Answer told, RunwayNews.Squad squad) {
    parts(told, squad.all(), false);
    told.add(",\"head\":" + json(squad.head()) + ",\"page\":" + json(squad.page()) + ",\"parcel\":\"");
    List<ParcelPieces.Piece> pieces = new ArrayList<>(List.of(squad.begun()));
    told.add(text(squad.begun()));
    for (RunwayNews.One one : squad.all()) {
      pieces.add(one.lines());
      told.add(one.text());
    }
    return told.add(text(ParcelPieces.ended(pieces))).add("\"");
  }

  private static void parts(Answer told, List<RunwayNews.One> parts, boolean withText) {
    told.add(",\"parts\":[");
    String comma = "";
    for (RunwayNews.One one : parts) {
      told.add(comma + "{\"id\":" + one.id() + ",\"hash\":" + json(one.hash()) + ",\"top\":" + json(one.top()) + ",\"text\":\"");
      if (withText) {
        ParcelPieces.Piece begun = ParcelPieces.begun();
        told.add(text(begun)).add(one.text()).add(text(ParcelPieces.ended(List.of(begun, one.lines()))));
      }
      told.add("\"}");
      comma = ",";
    }
    told.add("]");
  }

  private static String text(ParcelPieces.Piece lines) {
    return new String(lines.inJson(), StandardCharsets.ISO_8859_1);
  }

  /** Takes what was tapped on a phone: lines of {@link boundwright.phone.Entry}; on disk and learned before the answer. */
  public void bring(Context ctx) {
    String body = ctx.body();
    RunwayDeeds.Outcome outcome = RunwayDeeds.bring(body, bench.track());
    Answer told = told(ctx);
    parts(told, news.these(outcome.athletes()), true);
    send(ctx, told.add(",\"answers\":" + json(outcome.answers()) + "}"));
  }

  private Answer told(Context ctx) {
    return new Answer().add("{\"now\":" + bench.clock().millis() + ",\"csrf\":" + json(gate.token(ctx)));
  }

  private static String json(Object value) {
    try {
      return Mapper.JSON.writeValueAsString(value);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Compressed where that pays and the phone reads it. */
  private static void send(Context ctx, Answer told) {
    ctx.contentType("application/json; charset=utf-8");
    ctx.disableCompression();
    ctx.header("Vary", "Accept-Encoding");
    String accepted = ctx.header("Accept-Encoding");
    if (told.length() > LEAST_PACKED && accepted != null && accepted.contains("gzip")) {
      ctx.header("Content-Encoding", "gzip");
      ctx.result(told.gzip());
    } else {
      ctx.result(told.plain());
    }
  }

  private static Map<String, String> have(String written) {
    Map<String, String> out = new LinkedHashMap<>();
    for (String pair : written.split(",", -1)) {
      int at = pair.indexOf(':');
      if (at > 0) {
        out.put(pair.substring(0, at), pair.substring(at + 1));
      }
    }
    return out;
  }
}
