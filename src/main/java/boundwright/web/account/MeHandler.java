package boundwright.web.account;

import boundwright.account.Accounts;
import boundwright.account.Bonds;
import boundwright.account.Membership;
import boundwright.account.Passkeys;
import boundwright.account.Passwords;
import boundwright.account.Session;
import boundwright.pairing.Phone;
import boundwright.pairing.PhoneRepository;
import boundwright.quantity.RefusedException;
import boundwright.web.department.Department;
import boundwright.web.door.Reach;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;

/** One's own account: password, browsers that are logged in, which club is looked at. */
public final class MeHandler {
  private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);

  private final Pages pages;
  private final Gate gate;
  private final Accounts accounts;
  private final Clock clock;
  private final Passkeys passkeys;
  private final Reach reach;
  private final Bonds bonds;
  private final Department department;
  private final PhoneRepository phones;

  public MeHandler(Pages pages, Gate gate, Accounts accounts, Passkeys passkeys, Bonds bonds, Department department, PhoneRepository phones, Reach reach, Clock clock) {
    this.phones = phones;
    this.bonds = bonds;
    this.department = department;
    this.passkeys = passkeys;
    this.reach = reach;
    this.pages = pages;
    this.gate = gate;
    this.accounts = accounts;
    this.clock = clock;
  }

  /** Registers the routes. */
  public void add(RoutesConfig routes) {
    routes.get("/me", ctx -> page(ctx, 200, ""));
    routes.post("/me/password", this::password);
    routes.post("/me/session/{id}/end", this::end);
    routes.post("/me/club", this::club);
    routes.post("/me/phone/{id}/revoke", this::shutPhoneOut);
  }

  /**
   * The page.
   *
   * @param name what others call them
   * @param login what they log in with
   * @param hasPassword whether they have set one
   * @param fewest fewest characters of a password
   * @param places the clubs that they are in
   * @param browsers where they are logged in
   * @param phones that came in by a code of theirs, in any club
   * @param keys passkeys that they have
   * @param passkeys whether browsers make passkeys for this address
   * @param department whose login can be connected
   * @param connected since when it is; empty if it is not
   * @param said what was done; empty for nothing
   * @param refusal why a password was not taken; empty for none
   */
  public record MeView(
      String name, String login, boolean hasPassword, int fewest, List<Place> places, List<Browser> browsers, List<OwnPhone> phones, List<Key> keys, boolean passkeys,
      DepartmentView department, String connected, String said, String refusal) {}

  /** A passkey. */
  public record Key(String credential, String name, String since) {}

  /** A club, as what they are there, and whether it is the one that they look at. */
  public record Place(long number, String club, String role, boolean here) {}

  /** A browser that is logged in. */
  public record Browser(long number, String name, String since, String seen, boolean here) {}

  /** A phone that came in by a code of theirs. */
  public record OwnPhone(long number, String name, String rights, String since, String seen) {}

  private void page(Context ctx, int status, String refusal) {
    Session session = session(ctx);
    Map<Long, String> clubs = accounts.kept().clubs().stream().collect(Collectors.toMap(c -> c.id(), c -> c.name()));
    List<Place> places =
        accounts.kept().memberships(session.account().id()).stream()
            .map(m -> new Place(m.clubId(), clubs.getOrDefault(m.clubId(), ""), m.role().label(), m.clubId() == session.clubId()))
            .toList();
    Function<Session, Browser> row =
        s -> new Browser(s.id(), s.browser().isEmpty() ? "A browser" : s.browser(), at(s.since()), at(s.lastSeen()), s.id() == session.id());
    String said =
        switch (Form.text(ctx, "done")) {
          case "password" -> "The password is set. All other browsers are logged out.";
          case "passkey" -> "That passkey holds no longer.";
          case "connected" -> "From now on you can log in with " + department.name() + ".";
          case "disconnected" -> department.name() + " no longer lets you in here.";
          case "phone" -> "That phone is shut out.";
          case "end" -> "That browser is logged out.";
          default -> "";
        };
    pages.show(
        ctx, status, "account/me", "Account", "account",
        new MeView(
            session.account().name(), session.account().login(), session.account().hasPassword(), Passwords.FEWEST, places,
            accounts.kept().sessions(session.account().id()).stream().map(row).toList(),
            theirs(session).stream().map(p -> new OwnPhone(p.id(), p.name(), p.rights().label(), at(p.since()), at(p.lastSeen()))).toList(),
            passkeys.of(session.account().id()).stream().map(k -> new Key(k.credential(), k.name(), at(k.since()))).toList(),
            PasskeyHandler.place(ctx, reach).takesPasskeys(), DepartmentView.of(ctx, department, reach),
            bonds.of(session.account().id(), department.issuer()).map(b -> at(b.since())).orElse(""), said, refusal));
  }

  private String at(java.time.Instant when) {
    return AT.format(when.atZone(clock.getZone()));
  }

  private Session session(Context ctx) {
    Session with = gate.caller(ctx).session();
    if (with == null) {
      throw new Turned(404, "Nobody is logged in here: this is the machine itself, or a paired phone.");
    }
    return with;
  }

  private void password(Context ctx) {
    department.turnAwayFromOwnLogins();
    String old = ctx.formParam("old");
    try {
      accounts.setPassword(session(ctx), old == null ? "" : old, LoginHandler.password(ctx));
    } catch (RefusedException e) {
      page(ctx, 422, String.valueOf(e.getMessage()));
      return;
    }
    ctx.redirect("/me?done=password", HttpStatus.SEE_OTHER);
  }

  private void end(Context ctx) {
    if (!accounts.kept().end(session(ctx).account().id(), Form.id(ctx.pathParam("id")))) {
      throw new Turned(404, "That browser is not logged in any more. Reload the page.");
    }
    ctx.redirect("/me?done=end", HttpStatus.SEE_OTHER);
  }

  private List<Phone> theirs(Session session) {
    return phones.all().stream().filter(p -> Objects.equals(p.owner().account(), session.account().id())).toList();
  }

  private void shutPhoneOut(Context ctx) {
    long asked = Form.id(ctx.pathParam("id"));
    if (theirs(session(ctx)).stream().noneMatch(p -> p.id() == asked) || !phones.revoke(asked)) {
      throw new Turned(404, "No phone of yours has the number " + ctx.pathParam("id") + ". It may have been shut out before; reload the page.");
    }
    ctx.redirect("/me?done=phone", HttpStatus.SEE_OTHER);
  }

  private void club(Context ctx) {
    Session session = session(ctx);
    long asked = Form.id(Form.text(ctx, "club"));
    List<Membership> places = accounts.kept().memberships(session.account().id());
    if (places.stream().noneMatch(m -> m.clubId() == asked)) {
      throw new Turned(403, "You are not in that club. Nothing was changed.");
    }
    accounts.kept().look(session.id(), asked);
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }
}
