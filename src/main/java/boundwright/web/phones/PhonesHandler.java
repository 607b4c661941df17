package boundwright.web.phones;

import boundwright.account.Session;
import boundwright.pairing.Owner;
import boundwright.pairing.Pairing;
import boundwright.pairing.Phone;
import boundwright.pairing.PhoneRepository;
import boundwright.pairing.PhoneRights;
import boundwright.web.door.Caller;
import boundwright.web.door.Reach;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The coach's side: codes, the phones that were let in, and shutting them out. */
public final class PhonesHandler {
  private static final DateTimeFormatter DAY_AND_TIME = DateTimeFormatter.ofPattern("d MMM, HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

  private final PhoneRepository phones;
  private final Clock clock;
  private final Gate gate;
  private final Pages pages;
  private final Reach reach;
  private final Pairing pairing;

  /**
   * @param phones those of all clubs, in the store that keeps the accounts
   * @param gate tells whose phones are shown
   */
  public PhonesHandler(PhoneRepository phones, Clock clock, Gate gate, Pages pages, Reach reach, Pairing pairing) {
    this.phones = phones;
    this.clock = clock;
    this.gate = gate;
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
    Pairing.Code code = pairing.offer(rights(ctx), owner(ctx));
    String address = reach.urls().get(0) + "/pair/" + code.text();
    QrCode qr = QrCode.of(address);
    page(ctx, new PhonesView.Shown(address, qr.side(), qr.path(), at(TIME, code.until()), code.rights().label()), "");
  }

  /** No code waits any more. */
  public void withdraw(Context ctx) {
    phones.withdrawAll();
    ctx.redirect("/phones?done=code", HttpStatus.SEE_OTHER);
  }

  /** Changes what a phone may do. */
  public void allow(Context ctx) {
    found(phones.allow(number(ctx), rights(ctx)), ctx);
    ctx.redirect("/phones?done=allow", HttpStatus.SEE_OTHER);
  }

  /** Shuts one phone out. */
  public void revoke(Context ctx) {
    found(phones.revoke(number(ctx)), ctx);
    ctx.redirect("/phones?done=out", HttpStatus.SEE_OTHER);
  }

  /** Shuts all phones out. */
  public void revokeAll(Context ctx) {
    theirs(ctx).forEach(p -> phones.revoke(p.id()));
    phones.withdrawAll();
    ctx.redirect("/phones?done=all", HttpStatus.SEE_OTHER);
  }

  private static PhoneRights rights(Context ctx) {
    return Form.text(ctx, "rights").isEmpty() ? PhoneRights.LOG : Form.oneOf(PhoneRights.class, "right of a phone", Form.text(ctx, "rights"));
  }

  /** The machine's own phones belong to nobody in particular, those of an account to it. */
  private Owner owner(Context ctx) {
    Caller by = gate.caller(ctx);
    Session with = by.session();
    return with == null ? Owner.MACHINE : new Owner(with.account().id(), by.club());
  }

  /** The phones that whoever asks may see and shut out: a head coach those of the club, others their own. */
  private List<Phone> theirs(Context ctx) {
    Caller by = gate.caller(ctx);
    Owner own = owner(ctx);
    return phones.all().stream().filter(p -> p.owner().club() == by.club() && (by.head() || p.owner().equals(own))).toList();
  }

  private long number(Context ctx) {
    long asked = Form.id(ctx.pathParam("id"));
    found(theirs(ctx).stream().anyMatch(p -> p.id() == asked), ctx);
    return asked;
  }

  private static void found(boolean found, Context ctx) {
    if (!found) {
      throw new Turned(404, "No phone has the number " + ctx.pathParam("id") + ". It may have been shut out before; reload the page.");
    }
  }

  private void page(Context ctx, PhonesView.@Nullable Shown code, String said) {
    List<PhonesView.Row> rows = theirs(ctx).stream().map(this::row).toList();
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
    return form.format(when.atZone(clock.getZone()));
  }
}
