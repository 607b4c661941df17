package boundwright.web.department;

import boundwright.machine.OwnersFile;
import boundwright.machine.SafeAddress;
import boundwright.quantity.PlainText;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.Reader;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;

/**
 * How this server knows a department's, from a file of the administrator's (docs/accounts.md). The secret stands elsewhere: in a file that
 * its owner alone may read, or in the environment.
 *
 * @param name as the button says it, 1 to 40 characters
 * @param issuer the department's server; {@code http} on this machine only
 * @param client what it calls this server
 * @param secret what this server proves that with; empty if it cannot be had
 * @param only whether nobody comes in by a password or a passkey
 * @param trouble why nobody can log in there, in a sentence; empty for nothing
 */
public record DepartmentSetting(String name, URI issuer, String client, String secret, boolean only, String trouble) {
  /** Where the secret stands if the file does not say where. */
  public static final String SECRET_VARIABLE = "BOUNDWRIGHT_DEPARTMENT_SECRET";

  private static final Set<String> KNOWN = Set.of("name", "issuer", "client", "secret-file", "secret-variable", "only");
  private static final int LONGEST_NAME = 40;

  /**
   * Reads the file.
   *
   * @param environment the environment variables
   * @throws RefusedException if it cannot be read as one: before anything is opened, so that a slip in it lets nobody in another way
   */
  public static DepartmentSetting read(Path file, Map<String, String> environment) {
    Properties said = new Properties();
    try (Reader in = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
      said.load(in);
    } catch (IOException | IllegalArgumentException e) {
      throw new RefusedException("The file " + file + " of the department cannot be read: " + e.getMessage() + ". docs/accounts.md shows one.", e);
    }
    Set<String> unknown = new TreeSet<>(said.stringPropertyNames());
    unknown.removeAll(KNOWN);
    if (!unknown.isEmpty()) {
      throw new RefusedException("The file " + file + " says '" + unknown.iterator().next() + "', which is not known. It takes " + String.join(", ", new TreeSet<>(KNOWN)) + ".");
    }
    String name = PlainText.checked(needed(said, "name", file));
    if (name.codePointCount(0, name.length()) > LONGEST_NAME) {
      throw new RefusedException("The name in " + file + " has " + name.codePointCount(0, name.length()) + " characters; 1 to " + LONGEST_NAME + " are taken.");
    }
    Secret secret = secret(said, file, environment);
    return new DepartmentSetting(name, issuer(needed(said, "issuer", file), file), needed(said, "client", file), secret.text(), only(said, file), secret.trouble());
  }

  private static String needed(Properties said, String key, Path file) {
    String value = said.getProperty(key, "").strip();
    if (value.isEmpty()) {
      throw new RefusedException("The file " + file + " of the department does not say '" + key + "'. It needs name, issuer and client.");
    }
    return value;
  }

  private static boolean only(Properties said, Path file) {
    return switch (said.getProperty("only", "no").strip()) {
      case "yes" -> true;
      case "no" -> false;
      default -> throw new RefusedException("In " + file + ", 'only' is '" + said.getProperty("only") + "'; it is yes or no.");
    };
  }

  private static URI issuer(String text, Path file) {
    try {
      URI issuer = new URI(text);
      if (issuer.getHost() != null && issuer.getQuery() == null && issuer.getFragment() == null && issuer.getUserInfo() == null && SafeAddress.isSafe(issuer, true)) {
        return issuer;
      }
    } catch (URISyntaxException e) {
      throw refusedIssuer(text, file);
    }
    throw refusedIssuer(text, file);
  }

  private static RefusedException refusedIssuer(String text, Path file) {
    return new RefusedException("The issuer '" + text + "' in " + file + " is no address over https. Plain http is taken on this machine itself only, for trials.");
  }

  private record Secret(String text, String trouble) {}

  private static Secret secret(Properties said, Path file, Map<String, String> environment) {
    String at = said.getProperty("secret-file", "").strip();
    String variable = said.getProperty("secret-variable", "").strip();
    if (!at.isEmpty() && !variable.isEmpty()) {
      throw new RefusedException("The file " + file + " says both secret-file and secret-variable. Leave one out.");
    }
    if (at.isEmpty()) {
      String name = variable.isEmpty() ? SECRET_VARIABLE : variable;
      String text = environment.getOrDefault(name, "").strip();
      return text.isEmpty() ? new Secret("", "the variable " + name + " with its secret is not set.") : new Secret(text, "");
    }
    Path where = file.toAbsolutePath().resolveSibling(at);
    try {
      if (OwnersFile.openToOthers(where)) {
        return new Secret("", "others than its owner may read the file with its secret. Shut it with chmod 600.");
      }
      String text = Files.readString(where, StandardCharsets.UTF_8).strip();
      return text.isEmpty() ? new Secret("", "the file with its secret is empty.") : new Secret(text, "");
    } catch (IOException e) {
      return new Secret("", "the file with its secret cannot be read.");
    }
  }

  /** Without the secret. */
  @Override
  public String toString() {
    return name + " at " + issuer + " as " + client;
  }
}
