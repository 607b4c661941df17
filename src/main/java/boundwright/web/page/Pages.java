package boundwright.web.page;

import boundwright.store.Workbench;
import boundwright.store.backup.BackupDesk;
import boundwright.web.door.Caller;
import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import io.javalin.http.Context;
import java.util.Map;

/** Writes pages from the precompiled templates. */
public final class Pages {
  private final TemplateEngine engine =
      TemplateEngine.createPrecompiled(null, ContentType.Html, Pages.class.getClassLoader(), "boundwright.pages");
  private final Workbench bench;
  private final Gate gate;
  private final Assets assets;

  public Pages(Workbench bench, Gate gate, Assets assets) {
    this.bench = bench;
    this.gate = gate;
    this.assets = assets;
  }

  /** A whole page or a fragment with {@code frame} and {@code v} as the template's parameters. */
  public void show(Context ctx, int status, String template, String title, String here, Object view) {
    StringOutput out = new StringOutput(16_384);
    Caller caller = gate.caller(ctx);
    Frame frame = new Frame(title, here, gate.token(ctx), bench.invented(), caller.head() && !isPartial(ctx) ? keeping() : "", assets, caller);
    engine.render("web/" + template + ".jte", Map.of("frame", frame, "v", view), out);
    ctx.status(status);
    ctx.contentType("text/html; charset=utf-8");
    ctx.result(out.toString());
  }

  private String keeping() {
    BackupDesk backups = bench.backups();
    if (!backups.lost().isEmpty()) {
      return "Entries are missing.";
    }
    return backups.trouble().isEmpty() ? backups.reminder() : "The daily backup could not be made.";
  }

  /** A page of one message, for what was not found, refused or went wrong. A partial page keeps what it shows. */
  public void message(Context ctx, int status, String heading, String sentence) {
    boolean clips = ctx.path().startsWith("/clips");
    message(ctx, status, heading, sentence, clips ? "/clips" : "", clips ? "To the clips" : "");
  }

  /**
   * As {@link #message(Context, int, String, String)}.
   *
   * @param to address of the way on; empty: to the squad, or to their own page
   * @param called the way on, as its button says it
   */
  public void message(Context ctx, int status, String heading, String sentence, String to, String called) {
    if (isPartial(ctx)) {
      ctx.header("HX-Retarget", "#notice");
      ctx.header("HX-Reswap", "innerHTML");
      show(ctx, status, "page/notice", heading, "", new Message(status, heading, sentence, to, called));
    } else {
      show(ctx, status, "page/message", heading, "", new Message(status, heading, sentence, to, called));
    }
  }

  /** Whether whoever asks may see and change everything. */
  public boolean mayAll(Context ctx) {
    return gate.caller(ctx).all();
  }

  /** Sends a PDF to be kept as a file of this name, without its ending. */
  public static void pdf(Context ctx, String name, byte[] bytes) {
    ctx.contentType("application/pdf");
    ctx.header("Content-Disposition", "attachment; filename=\"" + name + ".pdf\"");
    ctx.result(bytes);
  }

  /** Whether the page's script asked for a part of the page. */
  public static boolean isPartial(Context ctx) {
    return "true".equals(ctx.header("HX-Request")) && !"true".equals(ctx.header("HX-History-Restore-Request"));
  }

  /**
   * The model of a message.
   *
   * @param status HTTP status
   * @param heading a few words
   * @param sentence what happened and what to do
   * @param to address of the way on, or empty
   * @param called the way on, as its button says it
   */
  public record Message(int status, String heading, String sentence, String to, String called) {}
}
