package boundwright.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.footfall.Sequence;
import boundwright.load.GuardSettings;
import boundwright.quantity.LengthUnit;
import boundwright.quantity.RefusedException;
import boundwright.store.RepCsv;
import boundwright.store.season.PlanFile;
import boundwright.store.season.SeasonFile;
import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.InputStreamReader;
import java.io.ByteArrayInputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;

class TextsFuzzTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 14);

  /** What is read and written again reads the same. */
  @FuzzTest
  void sequence(FuzzedDataProvider data) {
    try {
      Sequence read = Sequence.parse(data.consumeRemainingAsString());
      assertThat(Sequence.parse(read.letters()).contacts()).isEqualTo(read.contacts());
      assertThat(Sequence.parse(read.text())).isEqualTo(read);
    } catch (RefusedException e) {
      said(e);
    }
  }

  /** Every length is a finite number of metres, whatever was typed. */
  @FuzzTest
  void length(FuzzedDataProvider data) {
    LengthUnit unit = data.pickValue(LengthUnit.values());
    boolean small = data.consumeBoolean();
    String text = data.consumeRemainingAsString();
    try {
      double metres = small ? unit.readSmall("length", text) : unit.read("length", text);
      assertThat(metres).isFinite();
      assertThat(unit.write(metres)).isNotBlank();
    } catch (RefusedException e) {
      said(e);
    }
  }

  /** Rows that were read are written and read again the same. */
  @FuzzTest
  void repCsv(byte[] data) {
    RepCsv.Reading read = RepCsv.read(new InputStreamReader(new ByteArrayInputStream(data), StandardCharsets.UTF_8), TODAY);
    read.problems().forEach(p -> assertThat(p.toString()).isNotBlank());
    StringWriter out = new StringWriter();
    RepCsv.write(out, read.rows());
    RepCsv.Reading again = RepCsv.read(new InputStreamReader(new ByteArrayInputStream(out.toString().getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8), TODAY);
    assertThat(again.problems()).isEmpty();
    assertThat(again.rows()).hasSameSizeAs(read.rows());
  }

  @FuzzTest
  void seasonFile(byte[] data) {
    try {
      SeasonFile.write(SeasonFile.read(data, GuardSettings.DEFAULT), GuardSettings.DEFAULT, "");
    } catch (RefusedException e) {
      said(e);
    }
  }

  @FuzzTest
  void planFile(byte[] data) {
    try {
      PlanFile.write(PlanFile.read(data));
    } catch (RefusedException e) {
      said(e);
    }
  }

  private static void said(RefusedException e) {
    assertThat(String.valueOf(e.getMessage())).isNotBlank().doesNotContain("Exception");
  }
}
