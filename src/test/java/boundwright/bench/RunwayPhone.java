package boundwright.bench;

import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.footfall.Sequence;
import boundwright.phone.Entry;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;

/** A phone on the runway page: brings taps as lines, and hears what is new of the athletes as the page's script does. */
final class RunwayPhone {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Executor FEW = Executors.newFixedThreadPool(2, RunwayPhone::quiet);

  private final String url;
  private final HttpClient http =
      HttpClient.newBuilder().executor(FEW).version(HttpClient.Version.HTTP_1_1).cookieHandler(new CookieManager()).build();
  private final Map<Long, String> hashes = Collections.synchronizedMap(new TreeMap<>());
  private String csrf = "";
  private String head = "";

  RunwayPhone(String url) {
    this.url = url;
  }

  private static Thread quiet(Runnable work) {
    Thread t = new Thread(work, "phones");
    t.setDaemon(true);
    return t;
  }

  /** A tap as the page writes it. */
  static String line(String token, long athlete, Outcome outcome) {
    Entry.Did did = new Entry.Did(Sequence.parse("RRL RRL"), 4, Surface.TRACK, outcome, null, null, List.of(), null);
    return new Entry(token, Entry.Kind.REP, athlete, System.currentTimeMillis(), 0, did, "", 0, false, List.of()).line();
  }

  /** Hears what is new; answers how many bytes came over the line. */
  int look() throws IOException, InterruptedException {
    String have =
        Stream.concat(Stream.of("head:" + head), List.copyOf(hashes.entrySet()).stream().map(e -> e.getKey() + ":" + e.getValue()))
            .collect(Collectors.joining(","));
    HttpResponse<byte[]> answer =
        send(HttpRequest.newBuilder(URI.create(url + "/runway/parcel" + (head.isEmpty() ? "" : "?have=" + URLEncoder.encode(have, StandardCharsets.UTF_8)))).GET());
    JsonNode told = told("/runway/parcel", answer);
    csrf = told.path("csrf").asText();
    if (told.has("parcel")) {
      head = told.path("head").asText();
      hashes.clear();
    }
    heard(told);
    return answer.body().length;
  }

  /** Brings one tap; answers what became of it, {@code kept} or {@code again}. */
  String bring(String token, String line) throws IOException, InterruptedException {
    JsonNode told =
        told(
            "/runway/bring",
            send(
                HttpRequest.newBuilder(URI.create(url + "/runway/bring"))
                    .header("X-Boundwright-Form", csrf)
                    .header("Content-Type", "text/plain; charset=utf-8")
                    .POST(HttpRequest.BodyPublishers.ofString(line))));
    heard(told);
    JsonNode first = told.path("answers").path(0);
    String what = first.path("what").asText();
    if (!first.path("token").asText().equals(token) || !(what.equals("kept") || what.equals("again"))) {
      throw new IOException("/runway/bring: " + told.path("answers"));
    }
    return what;
  }

  private void heard(JsonNode told) {
    told.path("parts").forEach(p -> hashes.put(p.path("id").asLong(), p.path("hash").asText()));
  }

  private HttpResponse<byte[]> send(HttpRequest.Builder request) throws IOException, InterruptedException {
    return http.send(request.header("Accept-Encoding", "gzip").timeout(Duration.ofSeconds(30)).build(), HttpResponse.BodyHandlers.ofByteArray());
  }

  private static JsonNode told(String path, HttpResponse<byte[]> answer) throws IOException {
    if (answer.statusCode() != 200) {
      throw new IOException(path + " answered " + answer.statusCode());
    }
    boolean packed = answer.headers().firstValue("Content-Encoding").orElse("").equals("gzip");
    try (ByteArrayInputStream in = new ByteArrayInputStream(answer.body())) {
      return packed ? JSON.readTree(new GZIPInputStream(in)) : JSON.readTree(in);
    }
  }
}
