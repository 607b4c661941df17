package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.store.Workbench;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups from the command line: made, sealed, brought back, looked through. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folder in
class BackupCommandsTest {
  @TempDir Path dir;
  private Terminal terminal;

  @BeforeEach
  void squad() {
    terminal = new Terminal(dir);
    terminal.squad();
  }

  @Test
  void aSealedBackupGoesAwayAndComesBack() throws Exception {
    terminal.environment.put("BOUNDWRIGHT_PASSPHRASE", "four invented words here");
    Files.createDirectories(dir.resolve("stick"));
    Terminal.Said made = terminal.run("backup", "stick", "--json");
    assertThat(made.exit()).as(made.err()).isZero();
    assertThat(made.json().get("sealed").asBoolean()).isTrue();
    Path sealed = Path.of(made.json().get("file").asText());
    assertThat(sealed).isEqualTo(dir.resolve("stick/boundwright-20260514-100000.zip.age"));
    assertThat(Files.readAllBytes(sealed)).startsWith("age-encryption.org/v1\n".getBytes(java.nio.charset.StandardCharsets.US_ASCII));
    Terminal.Said back = terminal.run("restore", sealed.toString(), "--data", "other");
    assertThat(back.exit()).as(back.err()).isZero();
    assertThat(back.out()).contains("Brought back into").contains("3 athletes, 0 reps");
    try (Workbench w = Workbench.open(dir.resolve("other"), Terminal.CLOCK)) {
      assertThat(w.athletes().all()).hasSize(3);
    }
    assertThat(terminal.run("backup", sealed.toString()).err()).contains("is there already");
  }

  @Test
  void withoutAPassphraseNothingLeavesUnsealedUnlessAsked() throws Exception {
    Terminal.Said refused = terminal.run("backup", "away.zip.age");
    assertThat(refused.exit()).isEqualTo(2);
    assertThat(refused.err()).contains("A passphrase is needed");
    assertThat(dir.resolve("away.zip.age")).doesNotExist();
    assertThat(terminal.run("backup", "--plain", "away.zip").exit()).isZero();
    assertThat(Files.readAllBytes(dir.resolve("away.zip"))).startsWith('P', 'K');
    try (var left = Files.list(dir.resolve("data/backups"))) {
      assertThat(left).as("nothing left over").isEmpty();
    }
  }

  @Test
  void theDataAreLookedThrough() {
    assertThat(terminal.run("check-data").err()).contains("There is no backup in the folder");
    assertThat(terminal.run("backup").out()).contains("Backup made and looked through").contains("3 athletes");
    Terminal.Said well = terminal.run("check-data");
    assertThat(well.exit()).as(well.err()).isZero();
    assertThat(well.out()).contains("3 athletes, 0 reps, 1 whole backup in the folder. All is well.");
    assertThat(terminal.run("check-data", "--json").json().get("troubles").size()).isZero();
    assertThat(List.of(terminal.run("check-data", "--data", "nowhere").exit())).containsExactly(2);
  }
}
