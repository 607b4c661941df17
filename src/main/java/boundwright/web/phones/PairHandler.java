package boundwright.web.phones;

import boundwright.pairing.Pairing;
import boundwright.pairing.PhoneRights;
import boundwright.quantity.RefusedException;
import boundwright.web.door.Callers;
import boundwright.web.door.Reach;
import boundwright.web.door.WrongCodes;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/** The phone's side: opening the address from the code, saying whose phone it is, being let in. */
public final class PairHandler {
  private final Pages pages;
  private final Pairing pairing;
  private final Callers callers;
  private final WrongCodes wrong;
  private final Reach reach;

  public PairHandler(Pages pages, Pairing pairing, Callers callers, WrongCodes wrong, Reach reach) {
    this.reach = reach;
    this.pages = pages;
    this.pairing = pairing;
    this.callers = callers;
    this.wrong = wrong;
  }

  /** The page behind the code. Opening it uses nothing up: some cameras open an address by themselves, before anybody touched it. */
  public void show(Context ctx) {
    String code = ctx.pathParam("code");
    page(ctx, 200, code, rights(ctx, code), "", "");
  }

  /** Lets the phone in. */
  public void pair(Context ctx) {
    String code = ctx.pathParam("code");
    PhoneRights rights = rights(ctx, code);
    String name = Form.text(ctx, "name");
    Optional<Pairing.LetIn> in;
    try {
      in = pairing.pair(code, name, reach.isSealed(ctx.req()));
    } catch (RefusedException e) {
      page(ctx, 422, code, rights, name, String.valueOf(e.getMessage()));
      return;
    }
    callers.letIn(ctx, in.orElseThrow(() -> refused(ctx)).secret());
    wrong.forget(from(ctx));
    ctx.redirect("/runway", HttpStatus.SEE_OTHER);
  }

  private PhoneRights rights(Context ctx, String code) {
    if (wrong.mustWait(from(ctx))) {
      throw new Turned(
          429,
          "Too many wrong codes came from this phone: " + WrongCodes.MOST + " are taken. Wait " + WrongCodes.WAIT.toMinutes()
              + " minutes, then ask the coach for a new code.");
    }
    return pairing.offered(code).orElseThrow(() -> refused(ctx));
  }

  private Turned refused(Context ctx) {
    wrong.count(from(ctx));
    return new Turned(
        403,
        "This code does not hold. A code lasts " + Pairing.CODE_LASTS.toMinutes() + " minutes and lets one phone in, and the coach may have withdrawn it."
            + " Ask for a new one: on the laptop, under Phones.");
  }

  private static String from(Context ctx) {
    return String.valueOf(ctx.req().getRemoteAddr());
  }

  private void page(Context ctx, int status, String code, PhoneRights rights, String name, String refusal) {
    pages.show(ctx, status, "phones/pair", "Pair this phone", "", new PairView(code, rights.label(), name, !reach.isSealed(ctx.req()), refusal));
  }
}
