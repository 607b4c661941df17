package boundwright.store.movein;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.io.ByteArrayOutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a file is written in, against the JDK's own charsets and by the byte order marks of the Unicode standard (chapter 23.8; memory); which sign
 * stands between its cells.
 */
class SheetTest {
  private static final String TEXT = "Name%sBorn%sGroup\r\nZo\u00eb Brandel%s3.11.2010%sJ\u00f6rg's\r\n\"Quill%s \"\"P\"\" Piet\"%s4.12.2011%s\r\n";

  @ParameterizedTest(name = "{0} with {2}")
  @CsvSource({
      "UTF-8,          ,       COMMA,     UTF_8",
      "UTF-8,          EFBBBF, SEMICOLON, UTF_8",
      "UTF-16LE,       FFFE,   TAB,       UTF_16LE",
      "UTF-16LE,       ,       SEMICOLON, UTF_16LE",
      "UTF-16BE,       FEFF,   TAB,       UTF_16BE",
      "UTF-16BE,       ,       COMMA,     UTF_16BE",
      "ISO-8859-1,     ,       SEMICOLON, LATIN_1",
      "windows-1252,   ,       COMMA,     LATIN_1",
  })
  void whatItIsWrittenInIsRecognisedAndNamed(String charset, String mark, Separator separator, Encoding encoding) throws Exception {
    char s = separator.sign();
    String text = TEXT.replace("%s", String.valueOf(s));
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    if (mark != null) {
      file.write(java.util.HexFormat.of().parseHex(mark));
    }
    file.write(text.getBytes(Charset.forName(charset)));
    Sheet sheet = Sheet.read(file.toByteArray(), null, null);
    assertThat(sheet.encoding()).isEqualTo(encoding);
    assertThat(sheet.separator()).isEqualTo(separator);
    assertThat(sheet.readAs()).isEqualTo("read as " + encoding.label() + ", separated by " + separator.label());
    assertThat(sheet.header()).containsExactly("Name", "Born", "Group");
    assertThat(sheet.rows().get(0).cells()).containsExactly("Zo\u00eb Brandel", "3.11.2010", "J\u00f6rg's");
    assertThat(sheet.rows().get(1).cells()).containsExactly("Quill" + s + " \"P\" Piet", "4.12.2011", "");
    assertThat(sheet.rows().get(1).line()).isEqualTo(3);
  }

  @Test
  void theCoachMayHaveItReadDifferently() {
    byte[] file = "a;b,c\n1;2,3\n".getBytes(StandardCharsets.UTF_8);
    assertThat(Sheet.read(file, null, Separator.SEMICOLON).rows().get(0).cells()).containsExactly("1", "2,3");
    assertThat(Sheet.read(file, null, Separator.COMMA).rows().get(0).cells()).containsExactly("1;2", "3");
    byte[] latin = "Zo\u00eb;1\n".getBytes(StandardCharsets.ISO_8859_1);
    assertThatThrownBy(() -> Sheet.read(latin, Encoding.UTF_8, null)).isInstanceOf(RefusedException.class).hasMessageContaining("not written in UTF-8");
    assertThat(Sheet.read(latin, Encoding.LATIN_1, null).header()).containsExactly("Zo\u00eb", "1");
  }

  @Test
  void decimalCommasBetweenSemicolonsAreNotTakenForSeparators() {
    assertThat(Sheet.read("name;distance;wind\nA;12,34;1,2\nB;11,90;0,3\n".getBytes(StandardCharsets.UTF_8), null, null).separator()).isEqualTo(Separator.SEMICOLON);
  }

  @Test
  void aSpreadsheetsOwnFileIsRefusedWithAWayOut() throws Exception {
    ByteArrayOutputStream zip = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(zip)) {
      out.putNextEntry(new ZipEntry("xl/workbook.xml"));
    }
    assertThatThrownBy(() -> Sheet.read(zip.toByteArray(), null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("save the sheet as CSV");
    for (String bad : List.of("", "\n\n", ",,\n")) {
      assertThatThrownBy(() -> Sheet.read(bad.getBytes(StandardCharsets.UTF_8), null, null)).as(bad).isInstanceOf(RefusedException.class).hasMessageContaining("empty");
    }
    assertThatThrownBy(() -> Sheet.read("a,b\n\"open,c\n".getBytes(StandardCharsets.UTF_8), null, null)).isInstanceOf(RefusedException.class).hasMessageContaining("line 2");
  }
}
