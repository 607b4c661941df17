package boundwright.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.flight.Outcome;
import boundwright.quantity.RefusedException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** An entry's line: read back as it was, refused in words when it is none. */
class EntryTest {
  private static final String TOKEN = "0123456789abcdef0123456789abcdef";
  private static final String REP =
      "token=" + TOKEN + "&kind=REP&athleteId=3&atMs=1778586000000&sequence=RRL%20x2&steps=4&surface=GRASS&outcome=IN&mark_m=9.52";
  private static final long SEED = 7;

  @Test
  void aRepIsReadAndItsDayIsThatOfTheServersClock() {
    Entry e = Entry.parse(REP + "&offsetMs=-7200000&looked=yes&faults=low-knee@2,pops-up");
    assertThat(e.rep(LocalDate.of(2026, 5, 12)).outcome()).isEqualTo(Outcome.IN);
    assertThat(e.rep(LocalDate.of(2026, 5, 12)).markToSand_m()).isEqualTo(9.52);
    assertThat(e.faults()).containsExactly("low-knee@2", "pops-up");
    // 2026-05-12T11:40:00Z by the phone, two hours fast
    assertThat(e.at()).hasToString("2026-05-12T09:40:00Z");
    assertThat(Entry.parse(REP + "&offsetMs=54000000").day(ZoneOffset.UTC)).isEqualTo(LocalDate.of(2026, 5, 13));
  }

  @Test
  void everyEntryOfRandomDaysIsReadBackAsItWas() {
    for (long seed = SEED; seed < SEED + 20; seed++) {
      RandomDay day = new RandomDay(seed);
      RunwayDay phone = RunwayDay.open(day.parcel());
      for (int t = 0; t < 30; t++) {
        day.tap(phone);
      }
      assertThat(day.lines()).as("seed " + seed).isNotEmpty().allSatisfy(line -> assertThat(Entry.parse(line).line()).isEqualTo(line));
    }
  }

  /** The outside is the library's decoder of addresses (application/x-www-form-urlencoded, but that it reads + as a space). */
  @Test
  void namesAreWrittenAsAddressesWriteThem() {
    String[] texts = {"a b&c=d%", "\u00e4\u00df\u20ac", "\ud83d\udc5f", "line\nbreak\r", "\u0000\u007f\u0080\u07ff\u0800\uffff", "-._~,:@|"};
    for (String text : texts) {
      String line = new Fields("entry").put("k", text).line();
      assertThat(line).matches("k=[-A-Za-z0-9._~,:@|%]*");
      assertThat(URLDecoder.decode(line, StandardCharsets.UTF_8)).isEqualTo("k=" + text);
      assertThat(Fields.read("entry", line).text("k")).isEqualTo(text);
    }
  }

  @Test
  void nonsenseIsRefusedInWords() {
    String[] bad = {
      "", "=", "a", "%", "k=%4", "k=%zz", "k=%c3", "k=%ff", "k=%ed%a0%80", "k=\u00e4",
      REP + "&token=" + TOKEN,
      REP.replace(TOKEN, "0123"),
      REP.replace("kind=REP", "kind=ERASE"),
      REP.replace("athleteId=3", "athleteId=0"),
      REP.replace("athleteId=3", "athleteId=99999999999999999999"),
      REP.replace("9.52", "NaN"), REP.replace("9.52", "1e999"), REP.replace("9.52", "400"),
      REP.replace("steps=4", "steps=40"),
      REP.replace("RRL%20x2", "QQ"),
      REP + "&after=2",
      REP + "&prints=1,x",
      REP + "&v=2",
      "token=" + TOKEN + "&kind=UNDO&athleteId=3&atMs=1778586000000",
      "token=" + TOKEN + "&kind=HAND&athleteId=3&atMs=1778586000000&of=7&to=3",
      "token=" + TOKEN + "&kind=UNDO&athleteId=3&atMs=12&of=7",
      "k=" + "x".repeat(Entry.MAX_LINE),
    };
    for (String line : bad) {
      assertThatThrownBy(() -> Entry.parse(line)).as(line).isInstanceOf(RefusedException.class).hasMessageMatching("(?s).{20,}\\..*");
    }
  }

  @Test
  void changedLinesAreReadOrRefusedAndNothingElse() {
    Random random = new Random(SEED);
    int read = 0;
    String signs = "%&=,.@-0123456789abcdefREPUNDOHAND \u00e4\n";
    for (int i = 0; i < 20_000; i++) {
      StringBuilder line = new StringBuilder(REP);
      for (int k = 1 + random.nextInt(3); k > 0; k--) {
        int at = random.nextInt(line.length());
        switch (random.nextInt(3)) {
          case 0 -> line.deleteCharAt(at);
          case 1 -> line.insert(at, signs.charAt(random.nextInt(signs.length())));
          default -> line.setCharAt(at, signs.charAt(random.nextInt(signs.length())));
        }
      }
      try {
        Entry e = Entry.parse(line.toString());
        assertThat(Entry.parse(e.line())).as("seed " + SEED + ": " + line).isEqualTo(e);
        read++;
      } catch (RefusedException refused) {
        assertThat(refused.getMessage()).isNotBlank();
      }
    }
    assertThat(read).isBetween(500, 15_000);
  }
}
