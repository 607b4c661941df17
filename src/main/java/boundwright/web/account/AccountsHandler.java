package boundwright.web.account;

import boundwright.account.Account;
import boundwright.account.Accounts;
import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.account.Role;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.transfer.Transfers;
import boundwright.web.door.Reach;
import boundwright.web.page.Form;
import boundwright.web.page.Gate;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Who is what in the club, the links that let people in, what was done; and, in the first club, the other clubs. */
public final class AccountsHandler {
  private static final DateTimeFormatter AT = DateTimeFormatter.ofPattern("d MMM yyyy, HH:mm", Locale.ENGLISH);
  private static final int MOST_NOTES = 300;

  private final Workbench bench;
  private final Pages pages;
  private final Gate gate;
  private final Accounts accounts;
  private final Reach reach;
  private final Transfers transfers;

  /** @param bench of the club whose page it is */
  public AccountsHandler(Workbench bench, Pages pages, Gate gate, Accounts accounts, Reach reach, Transfers transfers) {
    this.bench = bench;
    this.pages = pages;
    this.gate = gate;
    this.accounts = accounts;
    this.reach = reach;
    this.transfers = transfers;
  }

  /** The page once more, with why something was not taken. */
  void refused(Context ctx, String why) {
    page(ctx, 422, "", null, why);
  }

  /** Registers the routes. */
  public void add(RoutesConfig routes) {
    routes.get("/accounts", ctx -> page(ctx, 200, "", null, ""));
    routes.post("/accounts", this::make);
    routes.post("/accounts/{id}/role", this::role);
    routes.post("/accounts/{id}/link", this::link);
    routes.post("/accounts/{id}/shut", ctx -> change(ctx, "shut an account out", () -> accounts.setActive(member(ctx).id(), false)));
    routes.post("/accounts/{id}/open", ctx -> change(ctx, "let an account in again", () -> accounts.setActive(member(ctx).id(), true)));
    routes.post("/accounts/{id}/leave", ctx -> change(ctx, "took an account out of the club", () -> accounts.leave(member(ctx).id(), club(ctx))));
    routes.get("/accounts/done", this::done);
    routes.get("/clubs", ctx -> clubs(ctx, 200, ""));
    routes.post("/clubs", this::addClub);
    routes.post("/clubs/{id}/name", this::nameClub);
    routes.post("/clubs/{id}/head", this::head);
  }

  /**
   * The page.
   *
   * @param club its name
   * @param people who is in it
   * @param athletes of the club, for the accounts of athletes
   * @param roles that there are
   * @param link a link that was just made; empty for none
   * @param linkFor whose
   * @param sealed whether the link can be opened from elsewhere, over https
   * @param first whether this is the club that the others are kept with
   * @param offers athletes whom other clubs offer
   * @param refusal why something was not taken; empty for none
   */
  public record AccountsView(
      String club, List<Person> people, List<Choice> athletes, List<Choice> roles, String link, String linkFor, boolean sealed, boolean first,
      List<Transfers.Offered> offers, String refusal) {}

  /** Somebody in the club. */
  public record Person(long number, String name, String login, String role, String roleName, String athlete, boolean active, boolean hasPassword, boolean self) {}

  /** Something to choose. */
  public record Choice(String value, String label) {}

  private void page(Context ctx, int status, String link, @Nullable Account linkFor, String refusal) {
    long club = club(ctx);
    List<Choice> athletes = bench.athletes().all().stream().map(a -> new Choice(String.valueOf(a.id()), a.name())).toList();
    List<Person> people = accounts.kept().members(club).stream().map(m -> person(ctx, m)).filter(Objects::nonNull).toList();
    pages.show(
        ctx, status, "account/accounts", "Accounts", "settings",
        new AccountsView(
            name(club), people, athletes, List.of(Role.values()).stream().map(r -> new Choice(r.name(), r.label())).toList(), link,
            linkFor == null ? "" : linkFor.name(), reach.urls().stream().anyMatch(u -> u.startsWith("https")), club == Club.FIRST,
            transfers.to(club), refusal));
  }

  private @Nullable Person person(Context ctx, Membership m) {
    var session = gate.caller(ctx).session();
    Long athlete = m.athleteId();
    String whose = athlete == null ? "" : bench.athletes().byId(athlete).map(a -> a.name()).orElse("an athlete who was erased");
    return accounts.kept()
        .byId(m.accountId())
        .map(
            a ->
                new Person(
                    a.id(), a.name(), a.login(), m.role().name(), m.role().label(), whose, a.active(), a.hasPassword(),
                    session != null && session.account().id() == a.id()))
        .orElse(null);
  }

  private String name(long club) {
    return accounts.kept().clubs().stream().filter(c -> c.id() == club).map(Club::name).findFirst().orElse("");
  }

  private long club(Context ctx) {
    return gate.caller(ctx).club();
  }

  private void make(Context ctx) {
    Account made;
    String code;
    try {
      made = accounts.make(Form.text(ctx, "login"), Form.text(ctx, "name"), role(Form.text(ctx, "role")), club(ctx), athlete(ctx));
      code = accounts.link(made.id());
    } catch (RefusedException e) {
      page(ctx, 422, "", null, String.valueOf(e.getMessage()));
      return;
    }
    gate.noted(ctx, "made an account", "account " + made.id());
    page(ctx, 200, address(code), made, "");
  }

  private void link(Context ctx) {
    Account of = member(ctx);
    if (!of.active()) {
      page(ctx, 422, "", null, "This account is shut out. Let it in again first.");
      return;
    }
    String code = accounts.link(of.id());
    gate.noted(ctx, "made a link to log in", "account " + of.id());
    page(ctx, 200, address(code), of, "");
  }

  /** Shown once, in this answer: only its hash is kept. */
  private String address(String code) {
    // where a password may be typed: over https, or on the machine itself
    return reach.urls().stream().filter(u -> u.startsWith("https")).findFirst().orElse(reach.own()) + "/enter/" + code;
  }

  private void role(Context ctx) {
    change(ctx, "changed a role", () -> accounts.setRole(member(ctx).id(), club(ctx), role(Form.text(ctx, "role")), athlete(ctx)));
  }

  private void change(Context ctx, String what, Runnable work) {
    try {
      work.run();
    } catch (RefusedException e) {
      page(ctx, 422, "", null, String.valueOf(e.getMessage()));
      return;
    }
    gate.noted(ctx, what, "account " + ctx.pathParam("id"));
    ctx.redirect("/accounts", HttpStatus.SEE_OTHER);
  }

  private static Role role(String text) {
    return Form.oneOf(Role.class, "role", text);
  }

  private @Nullable Long athlete(Context ctx) {
    String asked = Form.text(ctx, "athlete");
    return asked.isEmpty() ? null : bench.athletes().byId(Form.id(asked)).map(a -> a.id()).orElse(null);
  }

  /** Only somebody of this club can be changed here. */
  private Account member(Context ctx) {
    long asked = Form.id(ctx.pathParam("id"));
    return accounts.kept().members(club(ctx)).stream()
        .filter(m -> m.accountId() == asked)
        .findFirst()
        .flatMap(m -> accounts.kept().byId(m.accountId()))
        .orElseThrow(() -> new Turned(404, "No account of this club has the number " + ctx.pathParam("id") + ". Reload the page."));
  }

  /** A line of what was done. */
  public record DoneLine(String at, String who, String what, String about) {}

  private void done(Context ctx) {
    List<DoneLine> lines =
        accounts.kept().notes(club(ctx), MOST_NOTES).stream()
            .map(n -> new DoneLine(AT.format(n.at().atZone(bench.clock().getZone())), n.who(), n.what(), n.about()))
            .toList();
    pages.show(ctx, 200, "account/done", "What was done", "settings", lines);
  }

  /**
   * The clubs.
   *
   * @param clubs all of them
   * @param refusal why something was not taken; empty for none
   * @param link a link for a club's head coach that was just made; empty for none
   * @param linkFor whose
   */
  public record ClubsView(List<ClubRow> clubs, String refusal, String link, String linkFor) {}

  /** A club. */
  public record ClubRow(long number, String name, int people) {}

  private void clubs(Context ctx, int status, String refusal) {
    clubs(ctx, status, refusal, "", "");
  }

  private void clubs(Context ctx, int status, String refusal, String link, String linkFor) {
    onlyFirst(ctx);
    List<ClubRow> rows = accounts.kept().clubs().stream().map(c -> new ClubRow(c.id(), c.name(), accounts.kept().members(c.id()).size())).toList();
    pages.show(ctx, status, "account/clubs", "Clubs", "settings", new ClubsView(rows, refusal, link, linkFor));
  }

  private void onlyFirst(Context ctx) {
    if (club(ctx) != Club.FIRST) {
      throw new Turned(403, "Clubs are made by the head coach of the first club. Nothing was changed.");
    }
  }

  private void addClub(Context ctx) {
    onlyFirst(ctx);
    Club made;
    try {
      made = accounts.addClub(Form.text(ctx, "name"));
    } catch (RefusedException e) {
      clubs(ctx, 422, String.valueOf(e.getMessage()));
      return;
    }
    gate.noted(ctx, "made a club", "club " + made.id());
    ctx.redirect("/clubs", HttpStatus.SEE_OTHER);
  }

  private void nameClub(Context ctx) {
    onlyFirst(ctx);
    try {
      accounts.renameClub(Form.id(ctx.pathParam("id")), Form.text(ctx, "name"));
    } catch (RefusedException e) {
      clubs(ctx, 422, String.valueOf(e.getMessage()));
      return;
    }
    gate.noted(ctx, "named a club", "club " + ctx.pathParam("id"));
    ctx.redirect("/clubs", HttpStatus.SEE_OTHER);
  }

  /** The first head coach of another club; the rest is that coach's own. */
  private void head(Context ctx) {
    onlyFirst(ctx);
    long club = Form.id(ctx.pathParam("id"));
    try {
      Account made = accounts.head(club, Form.text(ctx, "login"), Form.text(ctx, "name"));
      gate.noted(ctx, "made a head coach", "club " + club + " account " + made.id());
      clubs(ctx, 200, "", made.hasPassword() ? "" : address(accounts.link(made.id())), made.name());
    } catch (RefusedException e) {
      clubs(ctx, 422, String.valueOf(e.getMessage()));
    }
  }
}
