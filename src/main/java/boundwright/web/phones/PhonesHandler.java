package boundwright.web.phones;

import boundwright.pairing.Pairing;
import boundwright.pairing.Phone;
import boundwright.pairing.PhoneRights;
import boundwright.store.Workbench;
import boundwright.web.door.Reach;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The coach's side: codes, the phones that were let in, and shutting them out. Only the laptop itself is let in here. */
public final class PhonesHandler {
  private static final DateTimeFormatter DAY_AND_TIME = DateTimeFormatter.ofPattern("d MMM, HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

  private final Workbench bench;
  private final Pages pages;
  private final Reach reach;
  private final Pairing pairing;

  public PhonesHandler(Workbench bench, Pages pages, Reach reach, Pairing pairing) {
    this.bench = bench;
    this.pages = pages;
    this.reach = reach;
    this.pairing = pairing;
  }

  /** The list. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "done")) {
          case "out" -> "That phone is shut out.";
          case "all" -> "All phones are shut out, and no code waits.";
          case "allow" -> "Changed.";
          case "code" -> "The code is withdrawn.";
          default -> "";
        };
    page(ctx, null, said);
  }

  /** A new code. It is shown in the answer and nowhere again: only its hash is kept. */
  public void code(Context ctx) {
    if (reach.urls().isEmpty()) {
      page(ctx, null, "");
      return;
    }
    Pairing.Code code = pairing.offer(rights(ctx));
    String address = reach.urls().get(0) + "/pair/" + code.text();
    QrCode qr = QrCode.of(address);
    page(ctx, new PhonesView.Shown(address, qr.side(), qr.path(), at(TIME, code.until()), code.rights().label()), "");
  }

  /** No code waits any more. */
  public void withdraw(Context ctx) {
    bench.phones().withdrawAll();
    ctx.redirect("/phones?done=code", HttpStatus.SEE_OTHER);
  }

  /** Changes what a phone may do. */
  public void allow(Context ctx) {
    found(bench.phones().allow(number(ctx), rights(ctx)), ctx);
    ctx.redirect("/phones?done=allow", HttpStatus.SEE_OTHER);
  }

  /** Shuts one phone out. */
  public void revoke(Context ctx) {
    found(bench.phones().revoke(number(ctx)), ctx);
    ctx.redirect("/phones?done=out", HttpStatus.SEE_OTHER);
  }

  /** Shuts all phones out. */
  public void revokeAll(Context ctx) {
    bench.phones().revokeAll();
    ctx.redirect("/phones?done=all", HttpStatus.SEE_OTHER);
  }

  private static PhoneRights rights(Context ctx) {
    return Form.text(ctx, "rights").isEmpty() ? PhoneRights.LOG : Form.oneOf(PhoneRights.class, "right of a phone", Form.text(ctx, "rights"));
  }

  private static long number(Context ctx) {
    return Form.id(ctx.pathParam("id"));
  }

  private static void found(boolean found, Context ctx) {
    if (!found) {
      throw new Turned(404, "No phone has the number " + ctx.pathParam("id") + ". It may have been shut out before; reload the page.");
    }
  }

  private void page(Context ctx, PhonesView.@Nullable Shown code, String said) {
    List<PhonesView.Row> rows = bench.phones().all().stream().map(this::row).toList();
    pages.show(
        ctx, 200, "phones/phones", "Phones", "phones",
        new PhonesView(reach.forPhones(), reach.urls(), code, reach.https() ? reach.trustUrl() : "", rows, said));
  }

  private PhonesView.Row row(Phone p) {
    return new PhonesView.Row(
        p.id(), p.name(), p.rights().label(), p.rights() == PhoneRights.ALL, at(DAY_AND_TIME, p.since()), at(DAY_AND_TIME, p.lastSeen()),
        p.sealed() ? "https" : "http");
  }

  private String at(DateTimeFormatter form, Instant when) {
    return form.format(when.atZone(bench.clock().getZone()));
  }
}
