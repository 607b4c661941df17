package boundwright.web.licences;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.bytedeco.ffmpeg.global.avutil;
import org.junit.jupiter.api.Test;

class LicencesTest {
  private static Library library(String group, String... licences) {
    return new Library(group, "some", "1", List.of(licences));
  }

  @Test
  void everyLibraryThatShipsHasALicenceThatIsAccepted() {
    Accepted accepted = Shipped.accepted();
    Map<String, List<String>> unknown = new TreeMap<>();
    for (Library l : Shipped.libraries()) {
      List<String> names = accepted.unknown(l);
      if (!names.isEmpty()) {
        unknown.put(l.group() + ":" + l.name(), names);
      }
    }
    assertThat(unknown).as("add it to src/main/resources/licences/accepted.txt with the reason, or do without the library").isEmpty();
    assertThat(Shipped.libraries()).hasSizeGreaterThan(100);
  }

  @Test
  void whatIsNewOrHasNoneIsNotAccepted() {
    Accepted accepted = Accepted.read("Apache-2.0 | ours\nGPL-2.0-or-later for org.choice | one of two\na:b is MIT | its file");
    assertThat(accepted.unknown(library("x", "Apache-2.0"))).isEmpty();
    assertThat(accepted.unknown(library("x", "GPL-3.0-only"))).containsExactly("GPL-3.0-only");
    assertThat(accepted.unknown(library("x"))).isNotEmpty();
    assertThat(accepted.unknown(library("x", "GPL-2.0-or-later"))).isNotEmpty();
    assertThat(accepted.unknown(library("org.choice", "GPL-2.0-or-later"))).isEmpty();
    assertThat(accepted.corrected(new Library("a", "b", "1", List.of("BSD"))).licences()).containsExactly("MIT");
    assertThatThrownBy(() -> Accepted.read("MIT")).hasMessageContaining("without a reason");
  }

  /** The film library says of itself under which licence it was built. */
  @Test
  void ffmpegIsTheBuildWithoutGplParts() {
    assertThat(avutil.avutil_license().getString()).isEqualTo("LGPL version 3 or later");
    assertThat(avutil.av_version_info().getString()).isEqualTo("8.1.2");
    assertThat(Shipped.notice()).contains("ffmpeg 8.1.2").contains("LGPL version 3 or later");
  }

  @Test
  void theNoticeIsTheProjectsAndAllIsInTheText() throws Exception {
    assertThat(Shipped.notice()).isEqualTo(Files.readString(Path.of("NOTICE")));
    assertThat(Shipped.text()).contains("org.eclipse.jetty:jetty-server").contains("@mediapipe/pose").contains("SIL Open Font License");
  }
}
