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
import org.jspecify.annotations.Nullable;

/**
 * Styles, fonts and scripts, each read once from the jar. A page asks for them with the hash of their bytes in the
 * address, so that a browser may keep them for a year and still never shows an old one.
 */
public final class Assets {
  private static final String HTMX = "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js";

  /** Scripts of the runway page, each needing those before it. */
  public static final List<String> RUNWAY = List.of("kept.js", "runway-order.js", "runway-store.js", "runway-send.js", "runway-draw.js", "runway.js");

  private static final String WORKER = "worker.js";

  /** Read when it is first asked for: nobody waits for all of them at the start. The bytes are never changed. */
  private static final class Asset {
    private final String resource;
    private final String type;
    private byte @Nullable [] bytes;
    private String hash = "";

    Asset(String resource, String type) {
      this.resource = resource;
      this.type = type;
    }

    synchronized byte[] bytes() {
      byte[] there = bytes;
      if (there == null) {
        there = read();
        hash = hash(there);
        bytes = there;
      }
      return there;
    }

    synchronized String hash() {
      bytes();
      return hash;
    }

    private byte[] read() {
      try (InputStream in = Assets.class.getResourceAsStream(resource)) {
        if (in == null) {
          throw new IllegalStateException("the build left out " + resource);
        }
        return in.readAllBytes();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private static String hash(byte[] bytes) {
      try {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes), 0, 8);
      } catch (NoSuchAlgorithmException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private final Map<String, Asset> byName = new LinkedHashMap<>();

  /** Knows all of them; one that the build left out is an error when it is asked for. */
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

  /** What all of them are called. */
  List<String> names() {
    return List.copyOf(byName.keySet());
  }

  /** The address of an asset in its present version. */
  public String href(String name) {
    Asset asset = byName.get(name);
    if (asset == null) {
      throw new IllegalArgumentException("no asset is called " + name);
    }
    return "/assets/" + name + "?v=" + asset.hash();
  }

  /** Answers a request for an asset. */
  public void serve(Context ctx) {
    Asset asset = byName.get(ctx.pathParam("name"));
    if (asset == null) {
      throw new NotFoundResponse();
    }
    String tag = '"' + asset.hash() + '"';
    boolean versioned = asset.hash().equals(ctx.queryParam("v"));
    ctx.header("ETag", tag);
    ctx.header("Cache-Control", versioned ? "public, max-age=31536000, immutable" : "public, max-age=3600");
    if (tag.equals(ctx.header("If-None-Match"))) {
      ctx.status(304);
      return;
    }
    ctx.contentType(asset.type);
    ctx.result(asset.bytes());
  }

  /** Answers with the script that keeps the pages of the meets for when the connection is lost; a browser asks anew each time. */
  public void worker(Context ctx) {
    Asset asset = byName.get(WORKER);
    if (asset == null) {
      throw new NotFoundResponse();
    }
    ctx.header("Cache-Control", "no-cache");
    ctx.contentType(asset.type);
    ctx.result(asset.bytes());
  }

  private void add(String name, String resource, String type) {
    byName.put(name, new Asset(resource, type));
  }
}
