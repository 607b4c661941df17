package boundwright.web.page;

import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.track.Deed;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.function.LongSupplier;

/** Takes the forms of one kind of entry once, however often they are sent, and answers by sending the browser on. */
public final class Entries {
  private final Workbench bench;

  /** Remembers in this data folder. */
  public Entries(Workbench bench) {
    this.bench = bench;
  }

  /** Shows the page again with a refused form. */
  public interface Again {
    void show(Sent sent);
  }

  /**
   * Keeps an entry and sends the browser to {@code page} with {@code ?kept=} and the entry's number.
   *
   * @param keep stores the entry and answers its number
   * @param again shows the page with the form as it was sent
   */
  public void keep(Context ctx, String page, LongSupplier keep, Again again) {
    try {
      Optional<Long> number = bench.once(token(ctx), keep);
      ctx.redirect(page + "?kept=" + number.map(String::valueOf).orElse("twice"), HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      again.show(Sent.of(ctx, String.valueOf(e.getMessage())));
    }
  }

  /** The token of the form, which makes a double tap one entry. */
  public static String token(Context ctx) {
    return token(ctx, "tap again");
  }

  /**
   * As {@link #token(Context)}.
   *
   * @param again what to do after the page was loaded again, for a form without one
   */
  public static String token(Context ctx, String again) {
    String token = Form.text(ctx, "token");
    if (!Deed.isToken(token)) {
      throw new RefusedException("This form has no token against double taps, so nothing was kept. Reload the page and " + again + ".");
    }
    return token;
  }

  /** What the address says was done: {@code kept=12}, {@code kept=twice}, {@code removed=1}; or empty. */
  public static String said(Context ctx, String what) {
    String kept = Form.text(ctx, "kept");
    return kept.equals("twice")
        ? "That tap was kept already and was not kept twice."
        : kept.matches("\\d{1,18}") ? "Kept." : Form.has(ctx, "removed") ? what + " taken back." : "";
  }

  /** The number of the entry just kept, or 0. */
  public static long keptNumber(Context ctx) {
    String kept = Form.text(ctx, "kept");
    return kept.matches("\\d{1,18}") ? Long.parseLong(kept) : 0;
  }

  /** The number at the end of an address. */
  public static long number(Context ctx) {
    String number = ctx.pathParam("number");
    if (!number.matches("\\d{1,18}")) {
      throw new Turned(404, "No entry has the number " + number + ".");
    }
    return Long.parseLong(number);
  }
}
