package boundwright.web.department;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/**
 * A department's server in a process of its own: the npm package {@code oidc-provider} (certified by the OpenID Foundation, as its own page
 * says), which {@code ./check} installs into {@code target/oidc}. Without it the test is skipped and says so.
 */
public final class RealDepartment implements AutoCloseable {
  private static final Path PLACE = Path.of("target", "oidc");

  private final Process process;
  private final BufferedReader says;
  private final String issuer;

  private RealDepartment(Process process) throws IOException {
    this.process = process;
    this.says = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    this.issuer = String.valueOf(says.readLine());
  }

  /** Starts one that knows nobody yet who asks it. */
  public static RealDepartment start() throws IOException {
    Assumptions.assumeTrue(
        Files.isDirectory(PLACE.resolve("node_modules").resolve("oidc-provider")),
        "no OpenID Provider in target/oidc: ./check installs it with npm; left out");
    Process process = new ProcessBuilder("node", "department.mjs").directory(PLACE.toFile()).redirectError(PLACE.resolve("department.log").toFile()).start();
    RealDepartment started = new RealDepartment(process);
    assertThat(started.issuer).as("see target/oidc/department.log").startsWith("http://127.0.0.1:");
    return started;
  }

  /** Where it is. */
  public String issuer() {
    return issuer;
  }

  /** Tells it who asks, and where people are sent back to. */
  public void knows(String client, String secret, String redirect) throws IOException {
    OutputStream in = process.getOutputStream();
    in.write(("{\"client\":\"" + client + "\",\"secret\":\"" + secret + "\",\"redirect\":\"" + redirect + "\"}\n").getBytes(StandardCharsets.UTF_8));
    in.flush();
    assertThat(says.readLine()).as("see target/oidc/department.log").isEqualTo("ready");
  }

  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    process.destroy();
  }
}
