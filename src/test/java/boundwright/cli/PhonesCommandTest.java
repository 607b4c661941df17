package boundwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import boundwright.cli.Terminal.Said;
import boundwright.pairing.Pairing;
import boundwright.pairing.PhoneRights;
import boundwright.store.Workbench;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PhonesCommandTest {
  @TempDir Path folder = Path.of("");

  @Test
  void phonesAreListedAndShutOut() {
    Terminal terminal = new Terminal(folder);
    terminal.squad();
    try (Workbench bench = Workbench.open(folder.resolve("data"), Terminal.CLOCK)) {
      Pairing pairing = new Pairing(bench.phones(), Terminal.CLOCK, new Random(1));
      assertThat(pairing.pair(pairing.offer(PhoneRights.LOG).text(), "Mara", false)).isPresent();
      assertThat(pairing.pair(pairing.offer(PhoneRights.ALL).text(), "Second coach", true)).isPresent();
    }
    assertThat(terminal.run("phones").out()).contains("1  Mara, may log, since 2026-05-14 10:00").contains("Second coach, may change everything");
    Said one = terminal.run("phones", "--revoke", "1", "--json");
    assertThat(one.json().get("revoked").asInt()).isEqualTo(1);
    assertThat(one.json().get("phones").get(0).get("name").asText()).isEqualTo("Second coach");
    Said gone = terminal.run("phones", "--revoke", "1");
    assertThat(gone.exit()).isEqualTo(2);
    assertThat(gone.err()).contains("No phone has the number 1");
    assertThat(terminal.run("phones", "--revoke-all").out()).contains("1 phone is shut out").contains("No phone is let in");
    assertThat(terminal.run("phones", "--revoke-all", "--revoke", "3").exit()).isEqualTo(2);
  }

  @Test
  void serveShowsTheAddressesAndACode() {
    Terminal terminal = new Terminal(folder);
    AtomicReference<String> url = new AtomicReference<>("");
    terminal.until = url::set;
    Said said = terminal.run("serve", "--demo", "--port", "0", "--host", "0.0.0.0");
    assertThat(said.exit()).as(said.err()).isZero();
    assertThat(url.get()).startsWith("http://127.0.0.1:");
    assertThat(said.out()).containsAnyOf("/pair/", "This machine is on no network now");
    assertThat(terminal.run("serve", "--demo", "--port", "0", "--https").err()).contains("Add --host all");
    assertThat(terminal.run("serve", "--demo", "--port", "0", "--host", "no-such-host.invalid").err()).contains("no-such-host.invalid").contains("--host all");
    assertThat(terminal.run("serve", "--demo", "--port", "0", "--behind", "http://club.example").err()).contains("http://club.example").contains("https://NAME");
    assertThat(terminal.run("serve", "--demo", "--port", "0", "--name", "two words").err()).contains("letters, digits and hyphens");
  }

  @Test
  void serveSaysWhetherTheDepartmentsLoginsAreTaken() throws IOException {
    Terminal terminal = new Terminal(folder);
    terminal.until = url -> {};
    Path file = Files.writeString(folder.resolve("department.conf"), "name = Invented Department\nissuer = https://login.invalid\nclient = boundwright\n");
    assertThat(terminal.run("serve", "--demo", "--port", "0", "--department", file.toString()).err()).contains("over https").contains("--behind https://NAME");
    Said without = terminal.run("serve", "--demo", "--port", "0", "--behind", "https://club.invalid", "--department", file.toString());
    assertThat(without.exit()).as(without.err()).isZero();
    assertThat(without.err()).contains("BOUNDWRIGHT_DEPARTMENT_SECRET").contains("is not set").contains("Passwords and passkeys work as always");
    Files.writeString(file, "name = Invented Department\nonly = yes\n");
    Said slip = terminal.run("serve", "--demo", "--port", "0", "--behind", "https://club.invalid", "--department", file.toString());
    assertThat(slip.exit()).as("nothing is opened another way than it was meant").isEqualTo(2);
    assertThat(slip.err()).contains("does not say 'issuer'");
  }
}
