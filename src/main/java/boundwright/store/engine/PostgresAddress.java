package boundwright.store.engine;

import boundwright.quantity.RefusedException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A schema of a PostgreSQL. User and password come from the address, from the environment, or from the password file of PostgreSQL's own
 * programs ({@code ~/.pgpass}, {@code PGPASSFILE}); neither the address as it was given nor a password ever stands in a sentence.
 */
public final class PostgresAddress {
  /** How an address begins. */
  public static final String BEGINS = "jdbc:postgresql:";
  /** The environment variable with the user. */
  public static final String USER_VARIABLE = "BOUNDWRIGHT_DATABASE_USER";
  /** The environment variable with the password. */
  public static final String PASSWORD_VARIABLE = "BOUNDWRIGHT_DATABASE_PASSWORD";

  /** The schema when none is named. */
  static final String USUAL_SCHEMA = "boundwright";

  private static final Pattern FORM = Pattern.compile("jdbc:postgresql://((?:[^/?#@:,]+|\\[[0-9a-fA-F:]+])(?::\\d{1,5})?(?:,[^/?#@:,]+(?::\\d{1,5})?)*)/([^/?#@]+)(?:\\?([^#]*))?");
  private static final Pattern SCHEMA = Pattern.compile("(?!pg_)[a-z][a-z0-9_]{0,49}");
  private static final String EXAMPLE = "Write it so: jdbc:postgresql://host:5432/database?user=NAME&currentSchema=boundwright, with the password in $" + PASSWORD_VARIABLE + ".";

  private final String place;
  private final String options;
  private final String schema;
  private final @Nullable String user;
  private final @Nullable String password;

  private PostgresAddress(String place, String options, String schema, @Nullable String user, @Nullable String password) {
    this.place = place;
    this.options = options;
    this.schema = schema;
    this.user = user;
    this.password = password;
  }

  /**
   * Reads an address.
   *
   * @param text such as {@code jdbc:postgresql://host:5432/database?user=NAME&currentSchema=boundwright}; other parameters go to the driver
   * @param environment for what the address leaves out
   */
  public static PostgresAddress of(String text, Map<String, String> environment) {
    Matcher m = FORM.matcher(text.strip());
    if (!m.matches()) {
      throw new RefusedException("The address of the database is not understood (it is not repeated here, as it may hold a password). " + EXAMPLE);
    }
    String user = environment.get(USER_VARIABLE);
    String password = environment.get(PASSWORD_VARIABLE);
    String schema = USUAL_SCHEMA;
    List<String> others = new ArrayList<>();
    String query = m.group(3);
    for (String part : query == null || query.isEmpty() ? new String[0] : query.split("&")) {
      int at = part.indexOf('=');
      String value = at < 0 ? "" : URLDecoder.decode(part.substring(at + 1), StandardCharsets.UTF_8);
      switch (at < 0 ? part : part.substring(0, at)) {
        case "user" -> user = value;
        case "password" -> password = value;
        case "currentSchema" -> schema = value;
        default -> others.add(part);
      }
    }
    if (!SCHEMA.matcher(schema).matches()) {
      throw new RefusedException("The schema '" + schema + "' cannot be used: 1 to 50 small letters, digits and _, a letter first, not pg_.");
    }
    return new PostgresAddress(m.group(1) + "/" + m.group(2), String.join("&", others), schema, user, password);
  }

  /** The same database, the schema of another club. */
  PostgresAddress club(long number) {
    return new PostgresAddress(place, options, schema + "_club_" + number, user, password);
  }

  /** The schema's name; it needs no quotes. */
  String schema() {
    return schema;
  }

  /** What the driver is given, without user and password. */
  String url() {
    return "jdbc:postgresql://" + place + (options.isEmpty() ? "" : "?" + options);
  }

  /** User and password, as far as they were given. */
  Properties secrets() {
    Properties p = new Properties();
    if (user != null) {
      p.setProperty("user", user);
    }
    if (password != null) {
      p.setProperty("password", password);
    }
    return p;
  }

  /** What tells servers and users apart: stores of one pool differ in the schema only. */
  List<String> pool() {
    return List.of(url(), Objects.toString(user), Objects.toString(password));
  }

  /** What sentences call it. */
  @Override
  public String toString() {
    return place + " (schema " + schema + ")";
  }
}
