package boundwright.bench;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.HexFormat;
import java.util.Random;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A phone at the track: keeps its cookie, logs through the page's form as the page's script does, sends other forms as they stand. */
final class TrackPhone {
  private static final Pattern CSRF = Pattern.compile("name=\"csrf\" value=\"([^\"]*)\"");
  private static final Pattern FIELD =
      Pattern.compile("<input (?!type=\"(?:radio|checkbox|submit)\")[^>]*?name=\"([^\"]*)\"[^>]*?value=\"([^\"]*)\"|<select[^>]*name=\"([^\"]*)\"[^>]*>(.*?)</select>", Pattern.DOTALL);
  private static final Pattern CHOSEN = Pattern.compile("<option value=\"([^\"]*)\" selected");
  private static final Executor FEW = Executors.newFixedThreadPool(2, TrackPhone::quiet);
  private final String url;
  private final long athlete;
  private final HttpClient http =
      HttpClient.newBuilder().executor(FEW).version(HttpClient.Version.HTTP_1_1).cookieHandler(new CookieManager()).followRedirects(HttpClient.Redirect.NORMAL).build();
  private final Random random;
  private String csrf = "";

  TrackPhone(String url, long athlete, long seed) {
    this.url = url;
    this.athlete = athlete;
    this.random = new Random(seed);
  }

  private static Thread quiet(Runnable work) {
    Thread t = new Thread(work, "phones");
    t.setDaemon(true);
    return t;
  }

  long athlete() {
    return athlete;
  }

  static String token(Random random) {
    byte[] bytes = new byte[16];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** Opens a page and keeps its form token. */
  String open(String path) throws IOException, InterruptedException {
    HttpResponse<String> answer = http.send(request(path).GET().build(), HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw new IOException(path + " answered " + answer.statusCode());
    }
    Matcher m = CSRF.matcher(answer.body());
    if (m.find()) {
      csrf = m.group(1);
    }
    return answer.body();
  }

  /** Taps a result on the athlete's page. */
  void log(String token, String outcome) throws IOException, InterruptedException {
    String body =
        fields("csrf", csrf, "token", token, "sequence", "RRL RRL", "steps", "4", "surface", "TRACK", "sand", "yes", "mark", "", "landing", "",
            "judged", "no", "outcome", outcome);
    post("/athlete/" + athlete + "/log", body, true);
  }

  /** Sends the first form of a page that goes to {@code path}, one field changed. */
  void send(String page, String path, String changed, String value) throws IOException, InterruptedException {
    int from = page.indexOf("action=\"" + path + "\"");
    String form = page.substring(from, page.indexOf("</form>", from));
    StringBuilder body = new StringBuilder();
    for (Matcher m = FIELD.matcher(form); m.find(); ) {
      String name = m.group(1) == null ? m.group(3) : m.group(1);
      String stands = m.group(1) == null ? chosen(m.group(4)) : m.group(2);
      body.append(body.length() == 0 ? "" : "&").append(enc(name)).append('=').append(enc(name.equals(changed) ? value : stands));
    }
    post(path, body.toString(), false);
  }

  private static String chosen(String options) {
    Matcher m = CHOSEN.matcher(options);
    return m.find() ? m.group(1) : "";
  }

  private void post(String path, String body, boolean partial) throws IOException, InterruptedException {
    HttpRequest.Builder request =
        request(path).header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(body));
    if (partial) {
      request.header("HX-Request", "true");
    }
    HttpResponse<String> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 200) {
      throw new IOException(path + " answered " + answer.statusCode() + ": " + answer.body().replaceAll("<[^>]*>|\\s+", " ").strip());
    }
  }

  private HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create(url + path)).timeout(Duration.ofSeconds(30 + random.nextInt(2)));
  }

  private static String fields(String... namesAndValues) {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      body.append(i == 0 ? "" : "&").append(enc(namesAndValues[i])).append('=').append(enc(namesAndValues[i + 1]));
    }
    return body.toString();
  }

  private static String enc(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
