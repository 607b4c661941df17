package boundwright.cli;

import boundwright.cli.installed.Browser;
import boundwright.cli.installed.Rehearsal;
import boundwright.demo.DemoSquad;
import boundwright.pairing.Pairing;
import boundwright.pairing.PhoneRights;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.engine.DataPlace;
import boundwright.web.Ahead;
import boundwright.web.Opening;
import boundwright.web.WebServer;
import boundwright.web.account.DepartmentHandler;
import boundwright.web.department.Department;
import boundwright.web.department.DepartmentSetting;
import boundwright.web.door.LocalName;
import boundwright.web.door.Reach;
import boundwright.web.phones.QrCode;
import boundwright.web.squad.FirstPage;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicBoolean;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens the program in the browser. */
@Command(
    name = "serve",
    description = {
      "Opens the program for the browser of this machine; Ctrl-C closes it.",
      "Example: boundwright serve --demo%n"
    })
final class ServeCommand implements Callable<Integer> {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);

  private static final long FAREWELL_MS = 500;
  /** The environment variable that names the department's file. */
  private static final String DEPARTMENT_VARIABLE = "BOUNDWRIGHT_DEPARTMENT";
  private static final String OWN = "http://127.0.0.1:";

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--port", paramLabel = "N", description = "Port, 0 to 65535; 0 takes a free one. Default: 7100.")
  private int port = 7100;

  @Option(
      names = "--host",
      paramLabel = "ADDRESS",
      description = "Address to listen on, or all. Default: 127.0.0.1, this machine only. Any other lets phones on that network in, those that you pair.")
  private String host = "127.0.0.1";

  @Option(
      names = "--https",
      description = "Answer phones over https on the next port, with a certificate that this machine makes for itself. Goes with --host.")
  private boolean https;

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "Answer phones that ask for NAME.local. Goes with --host. Default: boundwright.")
  private String name = "boundwright";

  @Option(
      names = "--demo",
      description = "Open an invented squad. Without --data it is kept in a folder of its own, data-demo, apart from real athletes.")
  private boolean demo;

  @Option(names = "--no-films", description = "Read no films here: other machines do, with boundwright work.")
  private boolean noFilms;

  @Option(names = "--open", description = "Open the first page in the browser; if boundwright is open on this port already, that one's.")
  private boolean browser;

  @Option(
      names = "--rehearse",
      hidden = true,
      description = "Open, ask for the first pages, close; the launcher does it once after a build so that later starts are quicker.")
  private boolean rehearse;

  @Option(
      names = "--behind",
      paramLabel = "URL",
      description = "What browsers open if a proxy that speaks https stands before, as https://NAME. Everybody logs in then.")
  private String behind = "";

  @Option(
      names = "--department",
      paramLabel = "FILE",
      description = {
        "Take logins of the department that this file describes, too (OpenID Connect; docs/accounts.md). Goes with --behind, or --host and --https.",
        "Default: $" + DEPARTMENT_VARIABLE + "."
      })
  private String department = "";

  ServeCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws Exception {
    Surroundings s = top.surroundings();
    if (port < 0 || port > 65535) {
      throw new RefusedException("Port " + port + " is out of range: 0 to 65535. The usual one is 7100.");
    }
    // before anything is opened or invented
    Reach.of("127.0.0.1", false).behind(behind);
    if (https && !Reach.of(host, true).forPhones()) {
      throw new RefusedException(
          "--https is for phones, and with --host " + host + " only this machine can open the pages. Add --host all, or leave out --https.");
    }
    @Nullable DepartmentSetting logins = logins(s);
    if (browser && port != 0 && Browser.answers(OWN + port)) {
      s.out().println("boundwright is open already at " + OWN + port);
      show(s, OWN + port);
      return 0;
    }
    Path folder = demo ? data.demoFolder(s) : data.folder(s);
    DataPlace place = data.place(s, folder);
    Ahead.ofServer();
    try (Workbench bench = Workbench.open(place, s.clock())) {
      if (demo) {
        invent(bench, folder);
      }
      bench.learnBeside();
      FirstPage first = Ahead.ofFirstPage(bench);
      try (WebServer server = WebServer.start(bench, new Opening(host, port, https, LocalName.checked(name), folder.resolve("keys"), behind, logins), first)) {
        String url = server.reach().own();
        String entrance = server.entrance();
        say(s, server, entrance, place, bench.invented());
        sayLost(s, bench);
        sayDepartment(s, server);
        if (rehearse) {
          server.readFilms(s::trouble);
          rehearse(url, bench);
        } else {
          if (browser) {
            show(s, entrance);
          }
          Rehearsal.beside(s.environment());
          if (!noFilms) {
            server.readFilms(s::trouble);
          }
          AutoCloseable backups = bench.backups().byItself();
          try {
            untilClosed(s, server, url);
          } finally {
            backups.close();
          }
        }
      }
    }
    return 0;
  }

  /** How the department is known whose logins are taken; null for none. */
  private @Nullable DepartmentSetting logins(Surroundings s) {
    String file = department.isEmpty() ? s.environment().getOrDefault(DEPARTMENT_VARIABLE, "").strip() : department;
    if (file.isEmpty() || rehearse) {
      return null;
    }
    if (behind.isEmpty() && !https) {
      throw new RefusedException(
          "A department's server sends people back over https, and nothing is answered over https here. Add --behind https://NAME, or --host all --https.");
    }
    return DepartmentSetting.read(s.path(file), s.environment());
  }

  /** Where the department sends people back to, and why nobody can log in there if it is so. */
  private static void sayDepartment(Surroundings s, WebServer server) {
    Department department = server.department();
    if (!department.isThere()) {
      return;
    }
    department.look();
    String outside = server.reach().outside();
    String works =
        outside.isEmpty()
            ? "This machine is on no network now, so nobody can come back from " + department.name() + "."
            : "Logins of " + department.name() + " are taken. It sends people back to " + outside + DepartmentHandler.BACK;
    s.err().println(
        department.trouble().isEmpty()
            ? works
            : department.trouble() + (department.only() ? " Until then this terminal's address is the only way in." : " Passwords and passkeys work as always."));
    s.err().flush();
  }

  /** Until Ctrl-C, or until a page closes the program. */
  private static void untilClosed(Surroundings s, WebServer server, String url) throws InterruptedException {
    Thread waiting = Thread.currentThread();
    AtomicBoolean byPage = new AtomicBoolean();
    Thread page =
        new Thread(
            () -> {
              try {
                server.awaitClosing();
                // the page that says goodbye is still on its way
                Thread.sleep(FAREWELL_MS);
                byPage.set(true);
                waiting.interrupt();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            "closing");
    page.setDaemon(true);
    page.start();
    try {
      s.until().finished(url);
    } catch (InterruptedException e) {
      if (!byPage.get()) {
        throw e;
      }
    } finally {
      page.interrupt();
    }
  }

  private static void show(Surroundings s, String url) {
    if (!Browser.open(url, System.getProperty("os.name", ""))) {
      s.out().println("Open that address in your browser; this machine has no command that does it.");
    }
    s.out().flush();
  }

  private static void rehearse(String url, Workbench bench) throws IOException {
    for (String page : List.of("/", "/athlete/" + bench.athletes().all().get(0).id())) {
      try (InputStream answer = URI.create(url + page).toURL().openStream()) {
        answer.readAllBytes();
      }
    }
  }

  private static void invent(Workbench bench, Path folder) {
    if (bench.invented()) {
      return;
    }
    if (!bench.athletes().all().isEmpty()) {
      throw new RefusedException(
          "The data folder " + folder + " holds a squad of your own; invented athletes are never mixed with it."
              + " Leave out --demo to open it, or name another folder with --data.");
    }
    DemoSquad.fill(bench);
  }

  private static void sayLost(Surroundings s, Workbench bench) {
    String lost = bench.backups().lost();
    if (!lost.isEmpty()) {
      s.trouble(lost);
    }
  }

  private void say(Surroundings s, WebServer server, String entrance, DataPlace place, boolean invented) {
    Path folder = place.folder();
    Reach reach = server.reach();
    Optional<Pairing.Code> code = reach.urls().isEmpty() ? Optional.empty() : Optional.of(server.pairing().offer(PhoneRights.LOG));
    String address = code.map(c -> reach.urls().get(0) + "/pair/" + c.text()).orElse("");
    PrintWriter out = s.out();
    if (top.json()) {
      Map<String, Object> answer = new LinkedHashMap<>();
      answer.put("url", reach.own());
      answer.put("enter", entrance);
      answer.put("data", folder.toString());
      if (place.database() != null) {
        answer.put("database", place.toString());
      }
      if (place.films() != null) {
        answer.put("films", place.films().toString());
      }
      answer.put("invented", invented);
      answer.put("phones", reach.urls());
      answer.put("trust", reach.https() ? reach.trustUrl() : "");
      answer.put("trustAnew", server.trustAnew());
      code.ifPresent(c -> answer.put("pair", Map.of("address", address, "until", c.until().toString(), "rights", c.rights().name())));
      Json.print(out, answer);
    } else {
      out.println("boundwright is open at " + entrance);
      if (reach.forOthers()) {
        out.println("Others can reach it, so everybody logs in. This address lets one browser in, once.");
      }
      String beside = place.films() == null ? folder.toString() : place.films().toString();
      out.println("Data: " + (place.database() == null && place.films() == null ? "" : place + ", films in ") + beside + (invented ? " (an invented squad; no real athlete is in it)" : ""));
      if (reach.forPhones()) {
        phones(s, server, code, address);
      }
      out.println("Ctrl-C closes it.");
    }
    out.flush();
  }

  private void phones(Surroundings s, WebServer server, Optional<Pairing.Code> code, String address) {
    Reach reach = server.reach();
    PrintWriter out = s.out();
    if (code.isEmpty()) {
      out.println("This machine is on no network now, so no phone can reach it. Join the Wi-Fi and open boundwright again.");
      return;
    }
    out.println("Phones: " + String.join("  ", reach.urls()));
    if (server.nameless()) {
      out.println(name + ".local is not answered: this network does not carry such names. Use the address.");
    }
    if (reach.https()) {
      out.println(
          (server.trustAnew() ? "The certificate is a new one, because the old one does not hold for these addresses: each phone opens " : "A phone that is new here first opens ")
              + reach.trustUrl() + (server.trustAnew() ? " once more." : " and learns to trust this machine."));
    }
    out.println();
    out.print(QrCode.of(address).text(!s.environment().containsKey("NO_COLOR")));
    out.println("Hold a phone's camera at it, or type " + address);
    out.println(
        "It lets one phone in, to log, until " + TIME.format(code.get().until().atZone(s.clock().getZone())) + ". More codes and who is let in: "
            + reach.own() + "/phones");
    if (!reach.https()) {
      out.println("Plain http: somebody on the same Wi-Fi who knows how could read along. --https stops that.");
    }
  }
}
