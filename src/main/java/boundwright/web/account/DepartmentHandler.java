package boundwright.web.account;

import boundwright.account.Bonds;
import boundwright.account.Identity;
import boundwright.account.Passkeys;
import boundwright.account.Session;
import boundwright.account.Visit;
import boundwright.quantity.RefusedException;
import boundwright.web.department.Department;
import boundwright.web.door.Callers;
import boundwright.web.door.Notes;
import boundwright.web.door.Reach;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.net.URI;
import java.util.function.Function;

/**
 * Sends people to their department's login and takes them back. A page of ours stands at both ends of the way: a form may not lead to another
 * site, and a browser that comes from one does not bring its strict cookies along before it has seen a page of this one.
 */
public final class DepartmentHandler {
  /** Where the department sends people back to. */
  public static final String BACK = "/login/department/back";
  /** Browsers take a cookie whose name begins so only over https, and only from this very host. */
  private static final String COOKIE = "__Host-boundwright_away";

  private final Pages pages;
  private final Gate gate;
  private final Department department;
  private final Bonds bonds;
  private final LoginHandler login;
  private final Passkeys passkeys;
  private final Callers callers;
  private final Notes notes;
  private final Reach reach;

  /** @param login knows whom a link lets in, and counts wrong ones */
  public DepartmentHandler(
      Pages pages, Gate gate, Department department, Bonds bonds, LoginHandler login, Passkeys passkeys, Callers callers, Notes notes, Reach reach) {
    this.pages = pages;
    this.gate = gate;
    this.department = department;
    this.bonds = bonds;
    this.login = login;
    this.passkeys = passkeys;
    this.callers = callers;
    this.notes = notes;
    this.reach = reach;
  }

  /** Registers the routes. */
  public void add(RoutesConfig routes) {
    routes.post("/login/department", ctx -> send(ctx, "/login", bonds::toLogIn));
    routes.post("/enter/{code}/department", this::byLink);
    routes.post("/me/department", this::connect);
    routes.post("/me/department/remove", this::remove);
    routes.get(BACK, this::back);
  }

  /** On the way there: {@code address} is where the department's login is. */
  public record OnwardView(String name, String address) {}

  private void send(Context ctx, String from, Function<String, Bonds.Going> going) {
    if (!department.isThere()) {
      throw new Turned(404, "No department's login is taken here. Log in with your password.");
    }
    if (!DepartmentView.isHere(ctx, reach)) {
      throw new Turned(403, "The way back from " + department.name() + " leads to " + reach.outside() + ". Open that address and begin again.");
    }
    try {
      department.beReady();
      String browser = bonds.browser(ctx.cookie(COOKIE));
      String address = department.address(going.apply(browser), callback()).toString();
      cookie(ctx, browser);
      // by the page and not by the form itself, since a form may lead nowhere but here
      ctx.header("Refresh", "0; url=" + address);
      pages.show(ctx, 200, "account/onward", department.name(), "", new OnwardView(department.name(), address));
    } catch (RefusedException e) {
      if (department.trouble().isEmpty()) {
        throw e;
      }
      // that page says it
      ctx.redirect(from, HttpStatus.SEE_OTHER);
    }
  }

  private URI callback() {
    return URI.create(reach.outside() + BACK);
  }

  /** Not a strict one: it must come along when another site sends the browser back. It opens nothing by itself. */
  private static void cookie(Context ctx, String browser) {
    Cookie cookie = new Cookie(COOKIE, browser);
    cookie.setPath("/");
    cookie.setHttpOnly(true);
    cookie.setSecure(true);
    cookie.setSameSite(SameSite.LAX);
    cookie.setMaxAge((int) Bonds.VISIT_LASTS.toSeconds());
    ctx.cookie(cookie);
  }

  private void byLink(Context ctx) {
    String code = ctx.pathParam("code");
    if (!login.offer(ctx).anew()) {
      throw new Turned(403, "This link lets one browser in and connects nothing.");
    }
    send(ctx, "/enter/" + code, browser -> bonds.byLink(code, browser));
  }

  private void connect(Context ctx) {
    Session session = session(ctx);
    send(ctx, "/me", browser -> bonds.toConnect(session, browser));
  }

  private Session session(Context ctx) {
    Session with = gate.caller(ctx).session();
    if (with == null) {
      throw new Turned(404, "Nobody is logged in here.");
    }
    return with;
  }

  private void back(Context ctx) {
    if (!department.isThere()) {
      throw new Turned(404, "No department's login is taken here. Log in with your password.");
    }
    String held = ctx.cookie(COOKIE);
    String state = ctx.queryParam("state");
    Visit visit = bonds.back(state == null ? "" : state, held == null ? "" : held);
    Bonds.Came came;
    try {
      Identity identity = department.identity(visit, ctx.queryParamMap(), callback());
      came = bonds.finish(visit, identity, reach.isSealed(ctx.req()), LoginHandler.browser(ctx));
    } catch (RefusedException e) {
      notes.keep(callers.of(ctx), "was refused at the department's login", "");
      throw e;
    }
    notes.came(came.account(), came.club(), said(visit.purpose()));
    if (!came.secret().isEmpty()) {
      callers.seat(ctx, came.secret());
    }
    String onward = visit.purpose() == Visit.Purpose.CONNECT ? "/me?done=connected" : "/";
    ctx.header("Refresh", "0; url=" + onward);
    pages.show(ctx, 200, "account/onward", department.name(), "", new OnwardView("", onward));
  }

  private static String said(Visit.Purpose purpose) {
    return switch (purpose) {
      case LOGIN -> "logged in at the department";
      case CONNECT -> "connected the department's login";
      case LINK -> "came in by a link and connected the department's login";
    };
  }

  private void remove(Context ctx) {
    Session session = session(ctx);
    if (department.only()) {
      throw new Turned(403, "Here everybody logs in at " + department.name() + ", so your account stays connected.");
    }
    boolean otherWay = session.account().hasPassword() || !passkeys.of(session.account().id()).isEmpty();
    bonds.remove(session.account().id(), department.issuer(), otherWay);
    gate.noted(ctx, "disconnected the department's login", "");
    ctx.redirect("/me?done=disconnected", HttpStatus.SEE_OTHER);
  }
}
