package boundwright.cli;

import boundwright.account.Account;
import boundwright.account.Accounts;
import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.account.Noted;
import boundwright.account.Role;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import java.io.PrintWriter;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Who can log in: lists, makes, gives a link, shuts out. Whoever can open the data folder may do it; no password is asked or shown. */
@Command(
    name = "account",
    description = {
      "Lists who can log in; or makes an account, a link to log in with, or shuts one out. No password is ever typed here.",
      "Example: boundwright account --add mara --name \"NAME\" --role assistant%n"
    })
final class AccountCommand implements Callable<Integer> {
  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--add", paramLabel = "LOGIN", description = "Makes an account, with --name and --role, and a link for it.")
  private @Nullable String add;

  @Option(names = "--name", paramLabel = "NAME", description = "With --add: what others call them.")
  private @Nullable String name;

  @Option(names = "--role", paramLabel = "ROLE", description = "With --add: head-coach, assistant, medical, athlete or reader.")
  private @Nullable String role;

  @Option(names = "--athlete", paramLabel = "NAME", description = "With --role athlete: which athlete, in the first club.")
  private @Nullable String athlete;

  @Option(names = "--link", paramLabel = "LOGIN", description = "A link with which this account sets its password anew; all that let it in before ends when it is used.")
  private @Nullable String link;

  @Option(names = "--shut", paramLabel = "LOGIN", description = "Shuts this account out at once.")
  private @Nullable String shut;

  @Option(names = "--open", paramLabel = "LOGIN", description = "Lets it in again.")
  private @Nullable String open;

  AccountCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Surroundings s = top.surroundings();
    if (List.of(given(add), given(link), given(shut), given(open)).stream().mapToInt(Integer::intValue).sum() > 1) {
      throw new RefusedException("Give one of --add, --link, --shut and --open at a time. Nothing was changed.");
    }
    if (add == null && (name != null || role != null || athlete != null)) {
      throw new RefusedException("--name, --role and --athlete go with --add LOGIN. Nothing was changed.");
    }
    try (Workbench bench = data.open(s)) {
      Accounts accounts = new Accounts(bench.accounts(), s.clock(), new SecureRandom());
      say(s, bench, done(bench, accounts, s));
      return 0;
    }
  }

  /** Does what was asked; answers the code of a link, or nothing. */
  private String done(Workbench bench, Accounts accounts, Surroundings s) {
    String code = "";
    if (add != null) {
      Account made = made(bench, accounts, add);
      code = accounts.link(made.id());
      note(bench, s, "made an account", made);
    } else if (link != null) {
      Account of = called(bench, link);
      code = accounts.link(of.id());
      note(bench, s, "made a link to log in", of);
    } else if (shut != null || open != null) {
      Account of = called(bench, shut == null ? String.valueOf(open) : shut);
      accounts.setActive(of.id(), shut == null);
      note(bench, s, shut == null ? "let an account in again" : "shut an account out", of);
    }
    return code;
  }

  private static void note(Workbench bench, Surroundings s, String what, Account about) {
    bench.accounts().note(new Noted(s.clock().instant(), Club.FIRST, null, "command line", what, "account " + about.id()));
  }

  private static int given(@Nullable String option) {
    return option == null ? 0 : 1;
  }

  private Account made(Workbench bench, Accounts accounts, String login) {
    String called = name;
    String as = role;
    if (called == null || as == null) {
      throw new RefusedException("An account needs a name and a role: --add LOGIN --name NAME --role assistant. Nothing was kept.");
    }
    Long whose = athlete == null ? null : DataOptions.athlete(bench, athlete).id();
    return accounts.make(login, called, role(as), Club.FIRST, whose);
  }

  private static Role role(String text) {
    for (Role r : Role.values()) {
      if (r.name().equals(text.strip().toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_'))) {
        return r;
      }
    }
    throw new RefusedException("The role '" + text + "' is none: head-coach, assistant, medical, athlete or reader. Nothing was kept.");
  }

  private static Account called(Workbench bench, String login) {
    return bench.accounts()
        .byLogin(login.strip().toLowerCase(Locale.ROOT))
        .orElseThrow(() -> new RefusedException("Nobody logs in as '" + login.strip() + "'. Nothing was changed; boundwright account lists who does."));
  }

  private void say(Surroundings s, Workbench bench, String code) {
    AccountsAnswer answer = AccountsAnswer.of(bench, code);
    if (top.json()) {
      Json.print(s.out(), answer);
    } else {
      answer.print(s.out());
    }
  }

  /**
   * What is answered.
   *
   * @param accounts one for each account and club
   * @param enter what is added to the address of the server to log in once; empty for no link
   */
  record AccountsAnswer(List<Row> accounts, String enter) {
    /** An account in a club. */
    record Row(String login, String name, String role, String club, boolean active, boolean password) {}

    static AccountsAnswer of(Workbench bench, String code) {
      Map<Long, String> clubs = bench.accounts().clubs().stream().collect(Collectors.toMap(Club::id, Club::name));
      List<Row> rows = new ArrayList<>();
      for (Account a : bench.accounts().all()) {
        for (Membership m : bench.accounts().memberships(a.id())) {
          rows.add(new Row(a.login(), a.name(), m.role().label(), clubs.getOrDefault(m.clubId(), ""), a.active(), a.hasPassword()));
        }
      }
      return new AccountsAnswer(rows, code.isEmpty() ? "" : "/enter/" + code);
    }

    void print(PrintWriter out) {
      if (!enter.isEmpty()) {
        out.println("Add this to the address of the server; it works once, within " + Accounts.LINK_LASTS.toDays() + " days: " + enter);
      }
      if (accounts.isEmpty()) {
        out.println("Nobody logs in yet. boundwright serve --host all makes an account for whoever sits at the machine.");
      }
      for (Row r : accounts) {
        out.println(r.login() + "  " + r.name() + ", " + r.role() + ", " + r.club() + (r.active() ? "" : ", shut out") + (r.password() ? "" : ", no password yet"));
      }
    }
  }
}
