package boundwright.web.runway;

import boundwright.store.Workbench;
import boundwright.web.page.Assets;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The runway page, and what passes between it and here: all that a phone must know, and what was tapped on it. */
public final class RunwayHandler {
  private static final ObjectMapper JSON = new ObjectMapper();

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
    if (!squad.head().equals(have.get("head"))) {
      // the text of each is in that of the squad
      Map<String, Object> told = told(ctx, squad.all().stream().map(o -> new RunwayNews.One(o.id(), "", o.top(), o.hash())).toList());
      told.put("head", squad.head());
      told.put("page", squad.page());
      told.put("parcel", squad.parcel());
      answer(ctx, told);
    } else {
      answer(ctx, told(ctx, squad.all().stream().filter(o -> !o.hash().equals(have.get(String.valueOf(o.id())))).toList()));
    }
  }

  /** Takes what was tapped on a phone: lines of {@link boundwright.phone.Entry}; on disk and learned before the answer. */
  public void bring(Context ctx) {
    RunwayDeeds.Outcome outcome = RunwayDeeds.bring(ctx.body(), bench.track());
    Map<String, Object> told = told(ctx, news.these(outcome.athletes()));
    told.put("answers", outcome.answers());
    answer(ctx, told);
  }

  private Map<String, Object> told(Context ctx, List<RunwayNews.One> parts) {
    Map<String, Object> out = new LinkedHashMap<>();
    out.put("now", bench.clock().millis());
    out.put("csrf", gate.token(ctx));
    out.put("parts", parts);
    return out;
  }

  private static void answer(Context ctx, Map<String, Object> told) {
    try {
      ctx.contentType("application/json; charset=utf-8");
      ctx.result(JSON.writeValueAsBytes(told));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
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
