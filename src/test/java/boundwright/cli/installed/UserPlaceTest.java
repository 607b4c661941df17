package boundwright.cli.installed;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class UserPlaceTest {
  private static final Path USER = Path.of("/home/orla");

  /** XDG base directory specification 0.8 (from memory): $XDG_DATA_HOME, else $HOME/.local/share; a relative path in it is passed over. */
  @Test
  void onLinuxTheSpecificationOfBaseDirectoriesHolds() {
    assertThat(UserPlace.of("boundwright", Map.of("HOME", "/home/orla"), "Linux", Path.of("/nowhere"))).isEqualTo(Path.of("/home/orla/.local/share/boundwright"));
    assertThat(UserPlace.of("boundwright", Map.of("XDG_DATA_HOME", "/srv/data"), "Linux", USER)).isEqualTo(Path.of("/srv/data/boundwright"));
    assertThat(UserPlace.of("boundwright", Map.of("XDG_DATA_HOME", "data"), "Linux", USER)).isEqualTo(Path.of("/home/orla/.local/share/boundwright"));
  }

  /** The folders that the two systems name for it (from memory). */
  @Test
  void elsewhereItIsTheFolderThatTheSystemNames() {
    assertThat(UserPlace.of("boundwright", Map.of(), "Mac OS X", USER)).isEqualTo(Path.of("/home/orla/Library/Application Support/boundwright"));
    assertThat(UserPlace.of("boundwright", Map.of("APPDATA", "/c/Roaming"), "Windows 11", USER)).isEqualTo(Path.of("/c/Roaming/boundwright"));
    assertThat(UserPlace.of("boundwright", Map.of(), "Windows 11", USER)).isEqualTo(Path.of("/home/orla/AppData/Roaming/boundwright"));
  }

  @Test
  void thePagesAreOpenedByTheSystemsOwnCommand() {
    assertThat(Browser.command("http://127.0.0.1:7100", "Linux")).containsExactly("xdg-open", "http://127.0.0.1:7100");
    assertThat(Browser.command("http://127.0.0.1:7100", "Mac OS X")).containsExactly("open", "http://127.0.0.1:7100");
    assertThat(Browser.command("http://127.0.0.1:7100", "Windows 11").get(0)).isEqualTo("rundll32");
  }

  @Test
  void aFreePortIsNotThisProgram() {
    assertThat(Browser.answers("http://127.0.0.1:1")).isFalse();
  }
}
