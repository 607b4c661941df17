package boundwright.packaged;

import boundwright.clip.truth.Filmed;
import boundwright.clip.truth.Noise;
import boundwright.clip.truth.TrueClip;
import boundwright.footfall.Sequence;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Tries the packaged program as a coach meets it: on a search path without java, node and mvn, in an empty home. It opens the browser (a
 * stand-in that writes down what it is asked), shows the first page, reads a painted film with the network cut off, keeps the data in the
 * user's place, and closes from its own page. {@code ./check} runs it; alone: {@code packaging/try}. Arguments: the packaged folder, a folder to work in.
 */
public final class PackageTry {
  private static final int PATIENCE_S = 120;
  private static final Pattern TOKEN = Pattern.compile("name=\"csrf\" value=\"([^\"]+)\"");

  private final Path program;
  private final Path work;
  private final Path home;
  private final HttpClient browser = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();

  private PackageTry(Path folder, Path work) {
    this.program = folder.resolve("bin").resolve("boundwright");
    this.work = work;
    this.home = work.resolve("home");
  }

  public static void main(String[] args) throws Exception {
    Path folder = Path.of(args[0]).toAbsolutePath();
    new PackageTry(folder, Path.of(args[1]).toAbsolutePath()).all(folder);
  }

  private void all(Path folder) throws Exception {
    Files.createDirectories(home);
    Path commands = Files.createDirectories(work.resolve("commands"));
    Path standIn = commands.resolve("xdg-open");
    Files.writeString(standIn, "#!/bin/sh\necho \"$1\" > \"$HOME/opened\"\n");
    Files.setPosixFilePermissions(standIn, PosixFilePermissions.fromString("rwx------"));
    double first = openAndClose();
    film();
    Path archive = folder.resolve("lib").resolve("app").resolve("boundwright.jsa");
    await("the archive of loaded classes is beside the program", () -> Files.exists(archive));
    double second = openAndClose();
    System.out.printf("packaged program: opened, film read without a network, closed; start to first page %.1f s, the next time %.1f s%n", first, second);
  }

  private double openAndClose() throws Exception {
    long begun = System.nanoTime();
    Path opened = home.resolve("opened");
    Files.deleteIfExists(opened);
    Path said = work.resolve("said.txt");
    Process process = start(List.of(program.toString(), "serve", "--open", "--port", "0"), said);
    try {
      await("the browser is opened; the program said: " + Files.readString(said), () -> Files.exists(opened) && Files.size(opened) > 0);
      String url = Files.readString(opened).strip();
      HttpResponse<String> page = get(url + "/");
      double took_s = (System.nanoTime() - begun) / 1e9;
      need(page.statusCode() == 200 && page.body().contains("<title>"), "the first page is shown");
      need(get(url + "/health").body().equals("ok"), "/health says ok");
      Path data = home.resolve(".local/share/boundwright");
      need(Files.exists(data.resolve("boundwright.db")), "the data are in the user's place, " + data);
      need(Files.readString(said).contains("Data: " + data), "it says where the data are");
      close(url);
      need(process.waitFor(PATIENCE_S, TimeUnit.SECONDS), "it closes from its page");
      need(process.exitValue() == 0, "it ends well, and not with " + process.exitValue() + ": " + Files.readString(said));
      return took_s;
    } finally {
      process.destroyForcibly();
    }
  }

  private void close(String url) throws IOException, InterruptedException {
    Matcher token = TOKEN.matcher(get(url + "/settings").body());
    need(token.find(), "the settings have a form");
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(url + "/settings/close"))
            .header("Content-Type", "application/x-www-form-urlencoded").header("Origin", url)
            .POST(HttpRequest.BodyPublishers.ofString("csrf=" + URLEncoder.encode(token.group(1), StandardCharsets.UTF_8))).build();
    need(browser.send(request, HttpResponse.BodyHandlers.ofString()).statusCode() == 200, "the page says goodbye");
  }

  private HttpResponse<String> get(String url) throws IOException, InterruptedException {
    return browser.send(HttpRequest.newBuilder(URI.create(url)).build(), HttpResponse.BodyHandlers.ofString());
  }

  /** A rep of three contacts, painted; its first touchdown is known. */
  private void film() throws Exception {
    TrueClip clip = TrueClip.of(Sequence.parse("RRL"), 0, 6, 60, Noise.NONE, false, 3);
    Path film = work.resolve("painted.mp4");
    Filmed.write(clip, film, 0);
    Path said = work.resolve("film.json");
    List<String> command = new ArrayList<>(cutOff());
    command.addAll(List.of(program.toString(), "clip", film.toString(), "--json"));
    Process process = start(command, said);
    need(process.waitFor(PATIENCE_S, TimeUnit.SECONDS), "the film is read within " + PATIENCE_S + " s");
    need(process.exitValue() == 0, "the film is read: " + Files.readString(said));
    JsonNode contacts = new ObjectMapper().readTree(Files.readString(said)).get("contacts");
    need(contacts.size() >= 2, "contacts were found in the film: " + contacts);
  }

  /** A command that cuts the network off, where the system allows it. */
  private List<String> cutOff() throws Exception {
    for (List<String> way : List.of(List.of("/usr/bin/unshare", "-n", "--"), List.of("/usr/bin/unshare", "-rn", "--"))) {
      List<String> trial = new ArrayList<>(way);
      trial.add("/bin/true");
      if (Files.isExecutable(Path.of(way.get(0))) && start(trial, work.resolve("trial.txt")).waitFor() == 0) {
        return way;
      }
    }
    System.out.println("packaged program: the network could not be cut off here");
    return List.of();
  }

  private Process start(List<String> command, Path said) throws IOException {
    ProcessBuilder builder = new ProcessBuilder(command).directory(work.toFile()).redirectErrorStream(true).redirectOutput(said.toFile());
    builder.environment().clear();
    builder.environment().put("HOME", home.toString());
    builder.environment().put("PATH", work.resolve("commands").toString());
    return builder.start();
  }

  private interface Question {
    boolean yes() throws IOException;
  }

  private static void await(String what, Question question) throws IOException, InterruptedException {
    for (int i = 0; i < PATIENCE_S * 10; i++) {
      if (question.yes()) {
        return;
      }
      Thread.sleep(100);
    }
    need(false, what);
  }

  private static void need(boolean holds, String what) {
    if (!holds) {
      throw new IllegalStateException("Not so: " + what);
    }
  }
}
