package boundwright.cli;

import boundwright.demo.DemoSquad;
import boundwright.phone.Pairing;
import boundwright.phone.PhoneRights;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import boundwright.web.door.Reach;
import boundwright.web.phones.QrCode;
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
      names = "--demo",
      description = "Open an invented squad. Without --data it is kept in a folder of its own, data-demo, apart from real athletes.")
  private boolean demo;

  @Option(
      names = "--rehearse",
      hidden = true,
      description = "Open, ask for the first pages, close; the launcher does it once after a build so that later starts are quicker.")
  private boolean rehearse;

  ServeCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() throws InterruptedException, IOException {
    Surroundings s = top.surroundings();
    if (port < 0 || port > 65535) {
      throw new RefusedException("Port " + port + " is out of range: 0 to 65535. The usual one is 7100.");
    }
    Path folder = demo && !data.named(s) ? s.path("data-demo") : data.folder(s);
    try (Workbench bench = Workbench.open(folder, s.clock())) {
      if (demo) {
        invent(bench, folder);
      }
      try (WebServer server = WebServer.start(bench, host, port)) {
        String url = server.reach().own();
        say(s, server, folder, bench.invented());
        if (rehearse) {
          rehearse(url, bench);
        } else {
          bench.clips().start();
          s.until().finished(url);
        }
      }
    }
    return 0;
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

  private void say(Surroundings s, WebServer server, Path folder, boolean invented) {
    Reach reach = server.reach();
    Optional<Pairing.Code> code = reach.urls().isEmpty() ? Optional.empty() : Optional.of(server.pairing().offer(PhoneRights.LOG));
    String address = code.map(c -> reach.urls().get(0) + "/pair/" + c.text()).orElse("");
    PrintWriter out = s.out();
    if (top.json()) {
      Map<String, Object> answer = new LinkedHashMap<>();
      answer.put("url", reach.own());
      answer.put("data", folder.toString());
      answer.put("invented", invented);
      answer.put("phones", reach.urls());
      code.ifPresent(c -> answer.put("pair", Map.of("address", address, "until", c.until().toString(), "rights", c.rights().name())));
      Json.print(out, answer);
    } else {
      out.println("boundwright is open at " + reach.own());
      out.println("Data: " + folder + (invented ? " (an invented squad; no real athlete is in it)" : ""));
      if (reach.forPhones()) {
        phones(s, reach, code, address);
      }
      out.println("Ctrl-C closes it.");
    }
    out.flush();
  }

  private static void phones(Surroundings s, Reach reach, Optional<Pairing.Code> code, String address) {
    PrintWriter out = s.out();
    if (code.isEmpty()) {
      out.println("This machine is on no network now, so no phone can reach it. Join the Wi-Fi and open boundwright again.");
      return;
    }
    out.println("Phones: " + String.join("  ", reach.urls()));
    out.println();
    out.print(QrCode.of(address).text(!s.environment().containsKey("NO_COLOR")));
    out.println("Hold a phone's camera at it, or type " + address);
    out.println(
        "It lets one phone in, to log, until " + TIME.format(code.get().until().atZone(s.clock().getZone())) + ". More codes and who is let in: "
            + reach.own() + "/phones");
    out.println("Plain http: somebody on the same Wi-Fi who knows how could read along.");
  }
}
