package boundwright.clip.keep;

import boundwright.machine.OwnersFile;
import boundwright.machine.SafeAddress;
import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.Reader;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Where films are in an S3-compatible store, and how one is let in there. Nothing of it that is secret is ever printed. */
public final class BucketAddress {
  /** How an address begins. */
  public static final String BEGINS = "s3://";
  /** The environment variable with the server, {@code https://host:port}; left out, the region's own. */
  public static final String ENDPOINT_VARIABLE = "BOUNDWRIGHT_FILMS_ENDPOINT";
  /** The environment variable with the region. */
  public static final String REGION_VARIABLE = "BOUNDWRIGHT_FILMS_REGION";
  /** The environment variable with the key's name. */
  public static final String KEY_VARIABLE = "BOUNDWRIGHT_FILMS_KEY";
  /** The environment variable with the secret. */
  public static final String SECRET_VARIABLE = "BOUNDWRIGHT_FILMS_SECRET";
  /** The environment variable that names a file with both. */
  public static final String FILE_VARIABLE = "BOUNDWRIGHT_FILMS_KEYS";

  private static final Pattern FORM = Pattern.compile("s3://([a-z0-9][a-z0-9.-]{1,61}[a-z0-9])((?:/[A-Za-z0-9][A-Za-z0-9._-]*)*)/?");
  private static final String USUAL_REGION = "us-east-1";
  private static final String EXAMPLE = "Write it so: s3://BUCKET/FOLDER, with the server in $" + ENDPOINT_VARIABLE + ".";

  private final String bucket;
  private final String prefix;
  private final @Nullable URI endpoint;
  private final String region;
  private final String key;
  private final String secret;

  private BucketAddress(String bucket, String prefix, @Nullable URI endpoint, String region, String key, String secret) {
    this.bucket = bucket;
    this.prefix = prefix;
    this.endpoint = endpoint;
    this.region = region;
    this.key = key;
    this.secret = secret;
  }

  /**
   * Reads an address.
   *
   * @param text {@code s3://BUCKET} or {@code s3://BUCKET/FOLDER}
   * @param environment for the server, the region and the keys
   * @param here relative names of files begin there
   */
  public static BucketAddress of(String text, Map<String, String> environment, Path here) {
    Matcher m = FORM.matcher(text.strip());
    if (!m.matches()) {
      throw new RefusedException("The place of the films is not understood (it is not repeated here, as it may hold a secret). " + EXAMPLE);
    }
    Properties keys = keys(environment, here);
    String folders = m.group(2).isEmpty() ? "" : m.group(2).substring(1) + "/";
    String region = environment.getOrDefault(REGION_VARIABLE, "").strip();
    return new BucketAddress(
        m.group(1), folders, endpoint(environment.getOrDefault(ENDPOINT_VARIABLE, "").strip()), region.isEmpty() ? USUAL_REGION : region,
        keys.getProperty("key", ""), keys.getProperty("secret", ""));
  }

  private static @Nullable URI endpoint(String text) {
    if (text.isEmpty()) {
      return null;
    }
    URI uri;
    try {
      uri = new URI(text);
    } catch (URISyntaxException e) {
      throw odd(e);
    }
    String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
    String host = uri.getHost();
    if (host == null || uri.getUserInfo() != null || !(scheme.equals("https") || scheme.equals("http"))) {
      throw odd(null);
    }
    if (!SafeAddress.isSafe(uri, true)) {
      throw new RefusedException(
          "The films' store at " + host + " is named with http, so films of athletes could be read on their way. Name it with https in $" + ENDPOINT_VARIABLE + "; http is only for this machine itself.");
    }
    return uri;
  }

  private static RefusedException odd(@Nullable Exception cause) {
    String sentence = "The server in $" + ENDPOINT_VARIABLE + " is not understood. Write it so: https://host:9000, without name or password in it.";
    return cause == null ? new RefusedException(sentence) : new RefusedException(sentence, cause);
  }

  private static Properties keys(Map<String, String> environment, Path here) {
    Properties keys = new Properties();
    String file = environment.getOrDefault(FILE_VARIABLE, "").strip();
    if (!file.isEmpty()) {
      Path path = here.resolve(file);
      refuseOpen(path);
      try (Reader in = Files.newBufferedReader(path, StandardCharsets.UTF_8)) {
        keys.load(in);
      } catch (IOException | IllegalArgumentException e) {
        throw new RefusedException("The file " + path + " with the keys of the films' store cannot be read. It needs two lines: key=..., secret=...", e);
      }
    }
    put(keys, "key", environment.getOrDefault(KEY_VARIABLE, ""));
    put(keys, "secret", environment.getOrDefault(SECRET_VARIABLE, ""));
    if (keys.getProperty("key", "").isBlank() || keys.getProperty("secret", "").isBlank()) {
      throw new RefusedException(
          "The keys of the films' store are missing. Set $" + KEY_VARIABLE + " and $" + SECRET_VARIABLE + ", or name a file in $" + FILE_VARIABLE
              + " that only you can read, with two lines: key=..., secret=...");
    }
    return keys;
  }

  private static void put(Properties keys, String name, String value) {
    if (!value.isBlank()) {
      keys.setProperty(name, value.strip());
    }
  }

  private static void refuseOpen(Path file) {
    boolean open;
    try {
      open = OwnersFile.openToOthers(file);
    } catch (IOException e) {
      throw new RefusedException("There is no file " + file + " with the keys of the films' store, or you may not read it.", e);
    }
    if (open) {
      throw new RefusedException("Others can read the file " + file + " with the keys of the films' store, or run it. Take that away first: chmod 600 " + file);
    }
  }

  /** The place of another club beside this one's. */
  public BucketAddress club(long number) {
    return new BucketAddress(bucket, prefix + "clubs/" + number + "/", endpoint, region, key, secret);
  }

  String bucket() {
    return bucket;
  }

  /** What every name in the bucket begins with; empty, or ending in a stroke. */
  String prefix() {
    return prefix;
  }

  @Nullable URI endpoint() {
    return endpoint;
  }

  String region() {
    return region;
  }

  String key() {
    return key;
  }

  String secret() {
    return secret;
  }

  /** What sentences call it; never a key. */
  @Override
  public String toString() {
    URI at = endpoint;
    return BEGINS + bucket + (prefix.isEmpty() ? "" : "/" + prefix.substring(0, prefix.length() - 1)) + (at == null ? "" : " at " + at.getAuthority());
  }

  /** The same place, whoever is let in. */
  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof BucketAddress o && toString().equals(o.toString());
  }

  @Override
  public int hashCode() {
    return toString().hashCode();
  }
}
