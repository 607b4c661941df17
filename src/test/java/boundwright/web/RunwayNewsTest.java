package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.athlete.Surface;
import boundwright.flight.Outcome;
import boundwright.footfall.Foot;
import boundwright.footfall.Sequence;
import boundwright.phone.Entry;
import boundwright.runway.DayPlan;
import boundwright.runway.Drill;
import boundwright.store.Workbench;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What phones are told is not written anew for each of them; it must be what a program that has just started would tell. */
@SuppressWarnings("NullAway.Init") // filled in before each test
class RunwayNewsTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;
  private Workbench bench;
  private WebServer server;
  private final List<Athlete> squad = new ArrayList<>();

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, DAY);
    for (String name : List.of("Ada Fenn", "Bo Lark", "Cy Märrow & \"Co\" \\")) {
      squad.add(bench.athletes().add(new Athlete(0, name, Level.INTERMEDIATE, Foot.RIGHT, 4)));
    }
    bench.settings().keep(new DayPlan("", List.of(new Drill(Sequence.parse("RRL x2"), null, 1, 3, true))));
    server = WebServer.start(bench, "127.0.0.1", 0);
  }

  @AfterEach
  void close() {
    server.close();
    bench.close();
  }

  /** A phone that reads gzip, or not. */
  private static final class Phone {
    private final HttpClient http = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
    private final boolean gzip;
    private String csrf = "";

    Phone(boolean gzip) {
      this.gzip = gzip;
    }

    JsonNode look(WebServer server, String have) {
      JsonNode told = ask(HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + "/runway/parcel?have=" + have)).GET());
      csrf = told.path("csrf").asText();
      return told;
    }

    JsonNode bring(WebServer server, String lines) {
      return ask(
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + "/runway/bring"))
              .header("X-Boundwright-Form", csrf)
              .header("Content-Type", "text/plain; charset=utf-8")
              .POST(HttpRequest.BodyPublishers.ofString(lines)));
    }

    private JsonNode ask(HttpRequest.Builder request) {
      try {
        if (gzip) {
          request.header("Accept-Encoding", "gzip");
        }
        HttpResponse<byte[]> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
        assertThat(answer.statusCode()).isEqualTo(200);
        boolean packed = answer.headers().firstValue("Content-Encoding").orElse("").equals("gzip");
        // a short answer is not packed
        assertThat(packed).isEqualTo(gzip && answer.headers().firstValue("Content-Encoding").isPresent());
        ByteArrayInputStream in = new ByteArrayInputStream(answer.body());
        return packed ? JSON.readTree(new GZIPInputStream(in)) : JSON.readTree(in);
      } catch (IOException e) {
        throw new AssertionError(e);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new AssertionError(e);
      }
    }
  }

  private static String token(Random random) {
    byte[] bytes = new byte[16];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  private static String rep(String token, long athlete, Outcome outcome) {
    Entry.Did did = new Entry.Did(Sequence.parse("RRL RRL"), 4, Surface.TRACK, outcome, null, null, List.of(), null);
    return new Entry(token, Entry.Kind.REP, athlete, DAY.millis(), 0, did, "", 0, false, List.of()).line();
  }

  /** What a program that has just started tells of the same data. */
  private JsonNode anew(boolean gzip) {
    try (WebServer other = WebServer.start(bench, "127.0.0.1", 0)) {
      return new Phone(gzip).look(other, "");
    }
  }

  /** The lines with what is long in them cut to the check sum's length. */
  private static List<String> shortened(String parcel) {
    return parcel.lines().map(l -> l.replaceAll("(base|before)=([^&]{8})([^&]*)", "$1=$2..") + " " + l.hashCode()).toList();
  }

  private void assertTrue(String after) {
    JsonNode anew = anew(true);
    JsonNode told = new Phone(true).look(server, "");
    // after a save the squad is read beside, and a phone does not wait long for it
    for (int i = 0; i < 100 && !told.path("parcel").asText().equals(anew.path("parcel").asText()); i++) {
      told = new Phone(true).look(server, "");
    }
    JsonNode plain = new Phone(false).look(server, "");
    List<String> lines = shortened(told.path("parcel").asText());
    assertThat(lines).as(after).isEqualTo(shortened(anew.path("parcel").asText())).hasSizeGreaterThan(5);
    for (String field : List.of("parcel", "parts", "head", "page")) {
      assertThat(told.has(field)).isTrue();
      // not shown where they differ: it would fill pages
      assertThat(told.path(field).equals(anew.path(field)) && told.path(field).equals(plain.path(field))).as(field + " after " + after).isTrue();
    }
  }

  @Test
  void whateverIsBroughtOrChangedThePhonesHearWhatAFreshProgramWouldTell() {
    long seed = 20260512;
    Random random = new Random(seed);
    Phone phone = new Phone(true);
    phone.look(server, "");
    List<String> tokens = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      Athlete athlete = squad.get(random.nextInt(3));
      String what = "step " + i + " of seed " + seed + ": ";
      switch (random.nextInt(7)) {
        case 0 -> {
          bench.athletes().update(new Athlete(athlete.id(), athlete.name(), athlete.level(), athlete.takeOffFoot(), random.nextInt(7) * 2));
          what += "another approach";
        }
        case 1 -> {
          bench.settings().keep(new DayPlan("Day " + i, List.of(new Drill(Sequence.parse("RRL x2"), null, 1, 3, true))));
          what += "another plan";
        }
        case 2 -> {
          Set<Long> here = Set.of(squad.get(0).id(), squad.get(1 + random.nextInt(2)).id());
          bench.attendance().keepHere(LocalDate.now(DAY), here);
          what += "somebody away";
        }
        case 3 -> {
          if (!tokens.isEmpty()) {
            String of = tokens.remove(random.nextInt(tokens.size()));
            long whose = Long.parseLong(of.substring(33));
            String line = new Entry(token(random), Entry.Kind.UNDO, whose, DAY.millis(), 0, null, of.substring(0, 32), 0, false, List.of()).line();
            assertThat(phone.bring(server, line).path("answers").path(0).path("what").asText()).isEqualTo("kept");
          }
          what += "taken back";
        }
        default -> {
          String token = token(random);
          tokens.add(token + " " + athlete.id());
          JsonNode told = phone.bring(server, rep(token, athlete.id(), random.nextBoolean() ? Outcome.IN : Outcome.SHORT));
          assertThat(told.path("parts")).hasSize(1);
          assertThat(told.path("parts").path(0).path("text").asText()).as("the answer carries the rep").contains(token);
          assertThat(phone.look(server, "head:" + phone.look(server, "").path("head").asText() + "," + told.path("parts").path(0).path("id").asText() + ":"
                  + told.path("parts").path(0).path("hash").asText()).path("parts"))
              .as("it is not told again").noneMatch(p -> p.path("id").equals(told.path("parts").path(0).path("id")));
          what += "tapped";
        }
      }
      assertTrue(what);
    }
  }

  /** A part that one question found out of date was filed anew by another in between: 23 of 420 phones were answered with 500. */
  @Test
  void phonesThatAskWhileOthersBringAreAllAnswered() throws InterruptedException, ExecutionException {
    int taps = 4;
    CountDownLatch tapping = new CountDownLatch(squad.size());
    ExecutorService hands = Executors.newFixedThreadPool(2 * squad.size());
    try {
      List<Callable<Integer>> phones = new ArrayList<>();
      for (Athlete athlete : squad) {
        phones.add(() -> taps(athlete, taps, tapping));
        phones.add(() -> looks(tapping));
      }
      // a phone that is not answered with 200 throws
      for (Future<Integer> answered : hands.invokeAll(phones)) {
        assertThat(answered.get()).isPositive();
      }
    } finally {
      hands.shutdownNow();
    }
  }

  private int taps(Athlete athlete, int taps, CountDownLatch tapping) {
    try {
      Random random = new Random(athlete.id());
      Phone phone = new Phone(true);
      phone.look(server, "");
      for (int i = 0; i < taps; i++) {
        assertThat(phone.bring(server, rep(token(random), athlete.id(), Outcome.IN)).path("parts")).hasSize(1);
      }
      return taps;
    } finally {
      tapping.countDown();
    }
  }

  private int looks(CountDownLatch tapping) {
    Phone phone = new Phone(true);
    int answers = 0;
    while (tapping.getCount() > 0 || answers == 0) {
      assertThat(phone.look(server, "").path("parts")).hasSize(3);
      answers++;
    }
    return answers;
  }
}
