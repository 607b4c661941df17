package boundwright.cli;

import boundwright.demo.DemoSquad;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.WebServer;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
  private static final Set<String> THIS_MACHINE = Set.of("127.0.0.1", "localhost", "::1");

  private final BoundwrightCommand top;

  @Mixin private DataOptions data = new DataOptions();

  @Option(names = "--port", paramLabel = "N", description = "Port, 0 to 65535; 0 takes a free one. Default: 7100.")
  private int port = 7100;

  @Option(
      names = "--host",
      paramLabel = "ADDRESS",
      description = "Address to listen on. Default: 127.0.0.1, this machine only. There is no password: any other address lets everybody on that network read and change the data.")
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
        String url = "http://" + (host.contains(":") ? "[" + host + "]" : host) + ":" + server.port();
        say(s.out(), url, folder, bench.invented());
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

  private void say(PrintWriter out, String url, Path folder, boolean invented) {
    if (top.json()) {
      Json.print(out, Map.of("url", url, "data", folder.toString(), "invented", invented));
    } else {
      out.println("boundwright is open at " + url);
      out.println("Data: " + folder + (invented ? " (an invented squad; no real athlete is in it)" : ""));
      if (!THIS_MACHINE.contains(host)) {
        out.println("Take care: it listens on " + host + " and has no password. Everybody on that network can read and change the data.");
      }
      out.println("Ctrl-C closes it.");
    }
    out.flush();
  }
}
