package boundwright.web;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.athlete.Athlete;
import boundwright.athlete.Level;
import boundwright.footfall.Foot;
import boundwright.store.Workbench;
import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;

/** Every form of the pages, and what a phone brings, against a server that runs: whatever is sent is answered, and never with a fault of the program. */
class FormsFuzzTest {
  private static final Clock DAY = Clock.fixed(Instant.parse("2026-05-12T09:00:00Z"), ZoneOffset.UTC);
  private static final Pattern FORM = Pattern.compile("(?s)<form[^>]*method=\"post\"[^>]*action=\"([^\"]+)\"[^>]*>(.*?)</form>");
  private static final Pattern NAME = Pattern.compile("<(?:input|select|textarea|button)[^>]*\\bname=\"([^\"]+)\"[^>]*?(?:\\bvalue=\"([^\"]*)\")?[^>]*>");
  private static final List<String> PAGES =
      List.of("/plan", "/plan/order", "/here", "/group/new", "/athletes", "/athlete/new", "/athlete/1", "/athlete/1/edit", "/athlete/1/care", "/athlete/1/back", "/athlete/1/load",
          "/athlete/1/technique", "/athlete/1/tests", "/athlete/1/jump", "/athlete/1/run-up", "/athlete/1/full-run", "/weather", "/athlete/1/aim", "/athlete/1/ready", "/athlete/1/second", "/meet",
          "/settings", "/settings/guard", "/settings/meet", "/season", "/import");
  /** What would end the run, or the athlete. */
  private static final Pattern LEFT_OUT = Pattern.compile(".*/(erase|close|logout|remove|backup.*)");
  private static final String ENTRY = "0123456789abcdef0123456789abcdef";

  @TempDir static Path folder = Path.of("");
  private static Workbench bench;
  private static WebServer server;
  private static Client client;
  private static String csrf = "";
  private static final List<Form> FORMS = new ArrayList<>();

  private record Field(String name, String usual) {}

  private record Form(String action, List<Field> fields) {}

  @BeforeAll
  static void open() {
    bench = Workbench.open(folder, DAY);
    bench.athletes().add(new Athlete(0, "Ilka Sandfoot", Level.INTERMEDIATE, Foot.RIGHT, 4));
    bench.athletes().add(new Athlete(0, "Bo Longstride", Level.BEGINNER, Foot.LEFT, 2));
    server = WebServer.start(bench, "127.0.0.1", 0);
    client = new Client(server.port());
    csrf = Client.hidden(client.get("/settings").body(), "csrf");
    Set<Form> forms = new LinkedHashSet<>();
    for (String page : PAGES) {
      Matcher form = FORM.matcher(client.get(page).body());
      while (form.find()) {
        List<Field> fields = new ArrayList<>();
        Matcher name = NAME.matcher(form.group(2));
        while (name.find()) {
          fields.add(new Field(name.group(1), name.group(2) == null ? "" : name.group(2)));
        }
        if (!LEFT_OUT.matcher(form.group(1)).matches()) {
          forms.add(new Form(form.group(1), List.copyOf(fields)));
        }
      }
    }
    FORMS.addAll(forms);
    assertThat(FORMS).hasSizeGreaterThan(15);
  }

  @AfterAll
  static void close() {
    server.close();
    bench.close();
  }

  /** One form, each field as it stands there or as it comes. */
  @FuzzTest
  void forms(FuzzedDataProvider data) {
    Form form = data.pickValue(FORMS);
    List<String> sent = new ArrayList<>(List.of("csrf", csrf));
    for (Field f : form.fields()) {
      if (!f.name().equals("csrf") && data.consumeProbabilityDouble() < 0.9) {
        sent.add(f.name());
        sent.add(data.consumeBoolean() ? data.consumeString(24) : f.usual());
      }
    }
    assertThat(client.post(form.action(), sent.toArray(String[]::new)).statusCode()).as("%s %s", form.action(), sent).isLessThan(500);
  }

  /** Lines as a phone keeps them, some with a token that it could have made. */
  @FuzzTest
  void bring(FuzzedDataProvider data) {
    int lines = data.consumeInt(0, 4);
    String body =
        String.join("\n", IntStream.range(0, lines).mapToObj(i -> (data.consumeBoolean() ? ENTRY : "") + data.consumeString(160)).toList())
            + data.consumeRemainingAsString();
    assertThat(client.bring(csrf, body)).as(body).isLessThan(500);
  }

  /** A file where reps are expected. */
  @FuzzTest
  void upload(FuzzedDataProvider data) {
    String name = data.consumeString(20).replaceAll("[\"\r\n]", "");
    assertThat(client.upload("/import", csrf, name, data.consumeRemainingAsString()).statusCode()).isLessThan(500);
  }
}
