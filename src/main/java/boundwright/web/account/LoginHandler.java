package boundwright.web.account;

import boundwright.account.Accounts;
import boundwright.account.Passwords;
import boundwright.quantity.RefusedException;
import boundwright.web.department.Department;
import boundwright.web.door.Callers;
import boundwright.web.door.Notes;
import boundwright.web.door.Reach;
import boundwright.web.door.Reached;
import boundwright.web.door.WrongCodes;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/** Lets people in by login and password, or by a link that works once, and out again. */
public final class LoginHandler {
  private final Pages pages;
  private final Accounts accounts;
  private final Callers callers;
  private final Notes notes;
  private final Reach reach;
  private final WrongCodes wrong;
  private final Department department;

  public LoginHandler(Pages pages, Accounts accounts, Callers callers, Notes notes, Reach reach, WrongCodes wrong, Department department) {
    this.department = department;
    this.pages = pages;
    this.accounts = accounts;
    this.callers = callers;
    this.notes = notes;
    this.reach = reach;
    this.wrong = wrong;
  }

  /** Registers the routes. */
  public void add(RoutesConfig routes) {
    routes.get("/login", ctx -> page(ctx, 200, "", ""));
    routes.post("/login", this::login);
    routes.get("/enter/{code}", ctx -> entrance(ctx, 200, ""));
    routes.post("/enter/{code}", this::enter);
    routes.post("/logout", this::logout);
  }

  /**
   * The form.
   *
   * @param login what was written
   * @param refusal why it was not taken; empty for none
   * @param passkeys whether browsers make passkeys for this address
   * @param open whether others on the Wi-Fi could read a password along, so that none is asked for
   * @param department whose login is taken, too
   */
  public record LoginView(String login, String refusal, boolean open, boolean passkeys, DepartmentView department) {}

  private void page(Context ctx, int status, String login, String refusal) {
    pages.show(
        ctx, status, "account/login", "Log in", "",
        new LoginView(login, refusal, isOpen(ctx), PasskeyHandler.place(ctx, reach).takesPasskeys(), DepartmentView.of(ctx, department, reach)));
  }

  private void login(Context ctx) {
    if (isOpen(ctx)) {
      throw new Turned(403, "This came over plain http, where others on the Wi-Fi can read a password along. It was not looked at. Open boundwright with --https, or ask for a code for this phone.");
    }
    department.turnAwayFromOwnLogins();
    String login = Form.text(ctx, "login");
    String secret;
    try {
      secret = accounts.enter(login, password(ctx), from(ctx), reach.isSealed(ctx.req()), browser(ctx));
    } catch (Accounts.WaitException e) {
      page(ctx, 429, login, String.valueOf(e.getMessage()));
      return;
    } catch (RefusedException e) {
      notes.keep(callers.of(ctx), "was refused at the login", "");
      page(ctx, 422, login, String.valueOf(e.getMessage()));
      return;
    }
    in(ctx, secret, "logged in");
  }

  private void in(Context ctx, String secret, String what) {
    callers.seat(ctx, secret);
    accounts.seat(secret, reach.isSealed(ctx.req())).ifPresent(s -> notes.came(s.session().account(), s.membership().clubId(), what));
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }

  /** A password as it was typed, spaces at its ends too. */
  static String password(Context ctx) {
    String sent = ctx.formParam("password");
    return sent == null ? "" : sent;
  }

  /** Somebody on this machine, or over https: nobody reads along. */
  private boolean isOpen(Context ctx) {
    return !reach.isSealed(ctx.req()) && callers.of(ctx).reached() != Reached.LOOPBACK;
  }

  /**
   * Behind a link.
   *
   * @param code of the link
   * @param name whose account it is
   * @param login what they log in with
   * @param anew whether a password is to be set
   * @param fewest fewest characters of one
   * @param refusal why it was not taken; empty for none
   * @param department whose login can be connected instead
   */
  public record EntranceView(String code, String name, String login, boolean anew, int fewest, String refusal, DepartmentView department) {}

  /** Opening the address uses nothing up: some programs open an address by themselves to show what is behind it. */
  private void entrance(Context ctx, int status, String refusal) {
    Accounts.Offered offer = offer(ctx);
    pages.show(
        ctx, status, "account/enter", "Welcome", "",
        new EntranceView(ctx.pathParam("code"), offer.account().name(), offer.account().login(), offer.anew(), Passwords.FEWEST, refusal,
            DepartmentView.of(ctx, department, reach)));
  }

  private void enter(Context ctx) {
    Accounts.Offered offer = offer(ctx);
    if (offer.anew()) {
      department.turnAwayFromOwnLogins();
    }
    Optional<String> secret;
    try {
      secret = accounts.enter(ctx.pathParam("code"), password(ctx), reach.isSealed(ctx.req()), browser(ctx));
    } catch (RefusedException e) {
      entrance(ctx, 422, String.valueOf(e.getMessage()));
      return;
    }
    String in = secret.orElseThrow(() -> refused(ctx));
    wrong.forget(from(ctx));
    in(ctx, in, offer.anew() ? "came in by a link and set a password" : "came in by the link of the terminal");
  }

  /** Whom the link in the address lets in; turns away whoever has none that holds, or tries them out. */
  Accounts.Offered offer(Context ctx) {
    if (isOpen(ctx)) {
      throw new Turned(403, "This came over plain http, where others on the Wi-Fi can read along, so the link was not used. Open boundwright with --https.");
    }
    if (wrong.mustWait(from(ctx))) {
      throw new Turned(429, "Too many wrong links came from here: " + WrongCodes.MOST + " are taken. Wait " + WrongCodes.WAIT.toMinutes() + " minutes.");
    }
    return accounts.offered(ctx.pathParam("code")).orElseThrow(() -> refused(ctx));
  }

  private Turned refused(Context ctx) {
    wrong.count(from(ctx));
    return new Turned(
        403,
        "This link does not hold. It works once, for " + Accounts.LINK_LASTS.toDays() + " days, and a newer one ends it. Ask the head coach for a new one, or log in.");
  }

  private void logout(Context ctx) {
    var session = callers.of(ctx).session();
    if (session != null) {
      accounts.kept().end(session.account().id(), session.id());
      callers.leave(ctx);
    }
    ctx.redirect("/login", HttpStatus.SEE_OTHER);
  }

  private static String from(Context ctx) {
    return String.valueOf(ctx.req().getRemoteAddr());
  }

  static String browser(Context ctx) {
    String says = ctx.header("User-Agent");
    return says == null ? "" : says.replaceAll("[^\\x20-\\x7e]", "");
  }
}
