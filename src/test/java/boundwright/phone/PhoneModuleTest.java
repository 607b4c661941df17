package boundwright.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import boundwright.quantity.RefusedException;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The module that browsers load says the same as the Java machine. The outside is another engine, Node's: it runs what the build made of
 * these rooms, and every sentence must be equal and every number to 1e-12.
 */
class PhoneModuleTest {
  private static final double SAME = 1e-12;
  /** Marks whose chances are as good as equal count as equal; the peak of the chance is flat. */
  private static final double SAME_MARK_M = 1e-9;
  private static final long SEED = 20_261_129;
  private static final int DAYS = 9;
  private static final int TAPS = 16;
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;

  /** A command for the module and what the Java machine answers to it. */
  private record Asked(String command, String answer, String where) {}

  private final List<Asked> asked = new ArrayList<>();
  private int numbers;

  private interface Answer {
    @Nullable Object get();
  }

  private void ask(String where, Answer answer, Object... command) {
    Map<String, @Nullable Object> out = new LinkedHashMap<>();
    try {
      out.put("answer", answer.get());
    } catch (RefusedException e) {
      out.put("refused", e.getMessage());
      out.put("name", "Refused");
    }
    try {
      asked.add(new Asked(JSON.writeValueAsString(command), JSON.writeValueAsString(out), where));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void theModuleSaysWhatTheServerSays() throws Exception {
    for (int d = 0; d < DAYS; d++) {
      day(SEED + d);
    }
    List<JsonNode> answers = node();
    assertThat(answers).hasSameSizeAs(asked);
    for (int i = 0; i < asked.size(); i++) {
      Asked a = asked.get(i);
      JsonNode java = JSON.readTree(a.answer());
      same(java, answers.get(i), a.where() + " " + a.command().substring(0, Math.min(120, a.command().length())), "");
    }
    assertThat(numbers).as("numbers compared, seed " + SEED).isGreaterThan(5_000);
  }

  private void day(long seed) {
    RandomDay day = new RandomDay(seed);
    String where = "seed " + seed;
    String text = day.parcel().text();
    RunwayDay phone = RunwayDay.open(text);
    ask(where, () -> null, "open", text);
    ask(where, phone::squad, "squad");
    look(where, day, phone);
    for (int t = 0; t < TAPS; t++) {
      String line = day.tap(phone);
      ask(where + " tap " + t, () -> phone.add(line), "add", line);
      if (t % 8 == 3) {
        look(where + " tap " + t, day, phone);
      }
    }
    ask(where, () -> {
      phone.refresh(day.parcel().parts().get(0).text());
      return null;
    }, "refresh", day.parcel().parts().get(0).text());
    look(where + " refreshed", day, phone);
    List<String> all = day.lines();
    ask(where, () -> phone.entries(all), "entries", String.join("\n", all));
    look(where + " again", day, phone);
    ask(where, () -> {
      phone.refresh(text);
      return null;
    }, "refresh", text);
    ask(where, () -> phone.card(99, 1), "card", 99, 1);
  }

  private void look(String where, RandomDay day, RunwayDay phone) {
    int drills = day.parcel().plan().drills().size();
    for (Parcel.Part p : day.parcel().parts()) {
      long id = p.profile().athlete().id();
      for (int n = drills == 0 ? 0 : 1; n <= Math.min(2, drills); n++) {
        int drill = n;
        ask(where, () -> phone.card(id, drill), "card", id, drill);
        ask(where, () -> phone.figures(id, drill), "figures", id, drill);
      }
    }
  }

  private void same(JsonNode java, JsonNode module, String where, String at) {
    if (java.isNumber() && module.isNumber()) {
      numbers++;
      double tolerance = at.endsWith("mark_m") ? SAME_MARK_M : SAME * Math.max(1, Math.abs(java.asDouble()));
      assertThat(module.asDouble()).as(where + at).isCloseTo(java.asDouble(), within(tolerance));
    } else if (java.isObject() && module.isObject()) {
      assertThat(names(module)).as(where + at).isEqualTo(names(java));
      java.fieldNames().forEachRemaining(n -> same(java.get(n), module.get(n), where, at + "/" + n));
    } else if (java.isArray() && module.isArray()) {
      assertThat(module.size()).as(where + at).isEqualTo(java.size());
      for (int i = 0; i < java.size(); i++) {
        same(java.get(i), module.get(i), where, at + "/" + i);
      }
    } else {
      assertThat(module).as(where + at).isEqualTo(java);
    }
  }

  private static List<String> names(JsonNode o) {
    List<String> out = new ArrayList<>();
    Iterator<String> names = o.fieldNames();
    names.forEachRemaining(out::add);
    out.sort(null);
    return out;
  }

  private List<JsonNode> node() throws IOException, InterruptedException {
    Path module = copied("/web/phone.js", "phone.mjs");
    Path runner = copied("/phone/run.mjs", "run.mjs");
    Path commands = folder.resolve("commands.txt");
    Files.write(commands, asked.stream().map(Asked::command).toList());
    Path out = folder.resolve("answers.txt");
    Path err = folder.resolve("trouble.txt");
    Process process =
        new ProcessBuilder("node", runner.toString(), module.toString(), commands.toString())
            .redirectOutput(out.toFile()).redirectError(err.toFile()).start();
    assertThat(process.waitFor(3, TimeUnit.MINUTES)).as("node ends").isTrue();
    assertThat(Files.readString(err)).isEmpty();
    assertThat(process.exitValue()).isZero();
    List<JsonNode> answers = new ArrayList<>();
    for (String line : Files.readAllLines(out, StandardCharsets.UTF_8)) {
      answers.add(JSON.readTree(line));
    }
    return answers;
  }

  private Path copied(String resource, String as) throws IOException {
    try (InputStream in = PhoneModuleTest.class.getResourceAsStream(resource)) {
      assertThat(in).as(resource + " is left out of the build: run it with Maven, which makes the module").isNotNull();
      Path to = folder.resolve(as);
      Files.copy(in, to);
      return to;
    }
  }
}
