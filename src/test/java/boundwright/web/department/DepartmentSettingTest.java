package boundwright.web.department;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The administrator's file: what is taken, what is refused before anything is opened, and where the secret may stand. */
class DepartmentSettingTest {
  private static final String RIGHT = "name = Invented Department\nissuer = https://login.invalid/school\nclient = boundwright\n";

  @TempDir Path folder;

  private DepartmentSetting read(String text, Map<String, String> environment) throws IOException {
    return DepartmentSetting.read(Files.writeString(folder.resolve("department.conf"), text), environment);
  }

  @Test
  void theSecretStandsInTheEnvironment() throws IOException {
    DepartmentSetting usual = read(RIGHT, Map.of(DepartmentSetting.SECRET_VARIABLE, " hush\n"));
    assertThat(usual.secret()).isEqualTo("hush");
    assertThat(usual.trouble()).isEmpty();
    assertThat(usual.only()).isFalse();
    assertThat(usual.toString()).contains("Invented Department").doesNotContain("hush");
    assertThat(read(RIGHT + "secret-variable = OWN\nonly = yes\n", Map.of("OWN", "x"))).satisfies(s -> assertThat(s.secret()).isEqualTo("x")).matches(DepartmentSetting::only);
    assertThat(read(RIGHT, Map.of()).trouble()).isEqualTo("the variable BOUNDWRIGHT_DEPARTMENT_SECRET with its secret is not set.");
  }

  @Test
  void orInAFileThatItsOwnerAloneMayRead() throws IOException {
    Path secret = Files.writeString(folder.resolve("secret"), "hush\n");
    Assumptions.assumeTrue(Files.getFileStore(secret).supportsFileAttributeView("posix"), "no permissions as on Unix here");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
    assertThat(read(RIGHT + "secret-file = secret\n", Map.of()).secret()).isEqualTo("hush");
    for (String loose : List.of("rw-r-----", "rw----r--", "rwxrwxrwx")) {
      Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString(loose));
      assertThat(read(RIGHT + "secret-file = secret\n", Map.of()).trouble()).as(loose).contains("others than its owner may read").contains("chmod 600");
      assertThat(read(RIGHT + "secret-file = secret\n", Map.of()).secret()).isEmpty();
    }
    assertThat(read(RIGHT + "secret-file = nowhere\n", Map.of()).trouble()).isEqualTo("the file with its secret cannot be read.");
    Files.setPosixFilePermissions(Files.writeString(folder.resolve("empty"), " \n"), PosixFilePermissions.fromString("rw-------"));
    assertThat(read(RIGHT + "secret-file = empty\n", Map.of()).trouble()).contains("is empty");
  }

  @Test
  void aSlipIsRefusedBeforeAnythingIsOpened() throws IOException {
    Map<String, String> wrong =
        Map.of(
            RIGHT.replace("name =", "called ="), "'called', which is not known",
            RIGHT.replace("client = boundwright", ""), "does not say 'client'",
            RIGHT + "only = maybe\n", "'only' is 'maybe'; it is yes or no",
            RIGHT + "secret-file = a\nsecret-variable = B\n", "both secret-file and secret-variable",
            RIGHT.replace("https://login.invalid/school", "http://login.invalid"), "no address over https",
            RIGHT.replace("https://login.invalid/school", "https://a@login.invalid"), "no address over https",
            RIGHT.replace("https://login.invalid/school", "login.invalid"), "no address over https",
            RIGHT.replace("Invented Department", "n".repeat(41)), "has 41 characters; 1 to 40",
            RIGHT + "only = \\u00zz\n", "cannot be read");
    for (Map.Entry<String, String> w : wrong.entrySet()) {
      assertThatThrownBy(() -> read(w.getKey(), Map.of())).as(w.getKey()).isInstanceOf(RefusedException.class).hasMessageContaining(w.getValue());
    }
    assertThatThrownBy(() -> DepartmentSetting.read(folder.resolve("none"), Map.of())).isInstanceOf(RefusedException.class).hasMessageContaining("cannot be read");
    for (String here : List.of("http://127.0.0.1:9", "http://localhost:9", "http://[::1]:9")) {
      assertThat(read(RIGHT.replace("https://login.invalid/school", here), Map.of()).issuer()).hasToString(here);
    }
    for (String elsewhere : List.of("http://127.0.0.1.invalid", "http://192.0.2.7", "ftp://127.0.0.1")) {
      assertThatThrownBy(() -> read(RIGHT.replace("https://login.invalid/school", elsewhere), Map.of())).as(elsewhere).isInstanceOf(RefusedException.class);
    }
  }
}
