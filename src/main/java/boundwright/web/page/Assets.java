package boundwright.web.page;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Styles, fonts and scripts, read once from the jar. A page asks for them with the hash of their bytes in the
 * address, so that a browser may keep them for a year and still never shows an old one.
 */
public final class Assets {
  private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js";

  /** Scripts of the runway page, each needing those before it. */
  public static final List<String> RUNWAY = List.of("kept.js", "runway-order.js", "runway-store.js", "runway-send.js", "runway-draw.js", "runway.js");

  private static final String WORKER = "worker.js";

  /** The bytes are never changed after they were read. */
  private static final class Asset {
    private final byte[] bytes;
    private final String type;
    private final String hash;

    Asset(byte[] bytes, String type, String hash) {
      this.bytes = bytes;
      this.type = type;
      this.hash = hash;
    }
  }

  private final Map<String, Asset> byName = new LinkedHashMap<>();

  /** Reads all of them; a missing one is an error of the build. */
  public Assets() {
    for (String css : new String[] {"boundwright.css", "strip.css", "card.css", "clip.css", "film.css", "session.css", "runway.css", "squad.css", "order.css", "meet.css", "phones.css", "season.css", "sure.css", "movein.css"}) {
      add(css, "/web/" + css, "text/css; charset=utf-8");
    }
    add("boundwright.js", "/web/boundwright.js", "text/javascript; charset=utf-8");
    add("passkey.js", "/web/passkey.js", "text/javascript; charset=utf-8");
    add("clip.js", "/web/clip.js", "text/javascript; charset=utf-8");
    add("film.js", "/web/film.js", "text/javascript; charset=utf-8");
    add("clip-marks.js", "/web/clip-marks.js", "text/javascript; charset=utf-8");
    add("squad.js", "/web/squad.js", "text/javascript; charset=utf-8");
    add("season-move.js", "/web/season-move.js", "text/javascript; charset=utf-8");
    add("season.js", "/web/season.js", "text/javascript; charset=utf-8");
    add("meet.js", "/web/meet.js", "text/javascript; charset=utf-8");
    for (String script : RUNWAY) {
      add(script, "/web/" + script, "text/javascript; charset=utf-8");
    }
    add("phone.js", "/web/phone.js", "text/javascript; charset=utf-8");
    add(WORKER, "/web/worker.js", "text/javascript; charset=utf-8");
    add("boundwright.webmanifest", "/web/boundwright.webmanifest", "application/manifest+json");
    add("favicon.svg", "/web/favicon.svg", "image/svg+xml");
    add("htmx.js", HTMX, "text/javascript; charset=utf-8");
    for (String font : new String[] {"Bitter_400Regular.ttf", "Bitter_400Regular_Italic.ttf", "Bitter_700Bold.ttf"}) {
      add("fonts/" + font, "/fonts/" + font, "font/ttf");
    }
  }

  /** The address of an asset in its present version. */
  public String href(String name) {
    Asset asset = byName.get(name);
    if (asset == null) {
      throw new IllegalArgumentException("no asset is called " + name);
    }
    return "/assets/" + name + "?v=" + asset.hash;
  }

  /** Answers a request for an asset. */
  public void serve(Context ctx) {
    Asset asset = byName.get(ctx.pathParam("name"));
    if (asset == null) {
      throw new NotFoundResponse();
    }
    String tag = '"' + asset.hash + '"';
    boolean versioned = asset.hash.equals(ctx.queryParam("v"));
    ctx.header("ETag", tag);
    ctx.header("Cache-Control", versioned ? "public, max-age=31536000, immutable" : "public, max-age=3600");
    if (tag.equals(ctx.header("If-None-Match"))) {
      ctx.status(304);
      return;
    }
    ctx.contentType(asset.type);
    ctx.result(asset.bytes);
  }

  /** Answers with the script that keeps the pages of the meets for when the connection is lost; a browser asks anew each time. */
  public void worker(Context ctx) {
    Asset asset = byName.get(WORKER);
    if (asset == null) {
      throw new NotFoundResponse();
    }
    ctx.header("Cache-Control", "no-cache");
    ctx.contentType(asset.type);
    ctx.result(asset.bytes);
  }

  private void add(String name, String resource, String type) {
    try (InputStream in = Assets.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the build left out " + resource);
      }
      byte[] bytes = in.readAllBytes();
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(bytes);
      byName.put(name, new Asset(bytes, type, HexFormat.of().formatHex(digest, 0, 8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
