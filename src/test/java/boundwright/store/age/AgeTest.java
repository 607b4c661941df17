package boundwright.store.age;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.quantity.RefusedException;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.stream.Stream;
import java.util.zip.InflaterInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The sealed file against the test vectors that the format's own project publishes (<em>published</em>: C2SP CCTV, {@code age/testdata},
 * see the README beside them): what must open opens to the bytes with the published hash, and what must fail fails without giving out
 * a byte more than the vector says.
 */
class AgeTest {
  private static final char[] PASSPHRASE = "a long invented passphrase".toCharArray();
  private static final int LITTLE_WORK = 4;

  @SuppressWarnings("ArrayRecordComponent") // read once, never compared
  private record Vector(Map<String, String> says, byte[] file) {
    String of(String key) {
      return says.getOrDefault(key, "");
    }
  }

  private static Path folder() throws Exception {
    Path one = Path.of(Objects.requireNonNull(AgeTest.class.getResource("/age/scrypt")).toURI());
    return Objects.requireNonNull(one.getParent());
  }

  static Stream<String> vectors() throws Exception {
    List<String> names;
    try (Stream<Path> all = Files.list(folder())) {
      names = all.map(p -> p.getFileName().toString()).filter(n -> !n.endsWith(".md")).sorted().toList();
    }
    assertThat(names).hasSizeGreaterThan(40);
    return names.stream();
  }

  private static Vector read(String name) throws Exception {
    byte[] all = Files.readAllBytes(folder().resolve(name));
    String text = new String(all, StandardCharsets.ISO_8859_1);
    int end = text.indexOf("\n\n");
    Map<String, String> says = new HashMap<>();
    text.substring(0, end).lines().forEach(l -> says.put(l.substring(0, l.indexOf(": ")), l.substring(l.indexOf(": ") + 2)));
    byte[] file = Arrays.copyOfRange(all, end + 2, all.length);
    if ("zlib".equals(says.get("compressed"))) {
      file = new InflaterInputStream(new ByteArrayInputStream(file)).readAllBytes();
    }
    return new Vector(says, file);
  }

  /** Most vectors of the pieces are sealed for a key of another kind, so they are opened with the file key that they name. */
  private static InputStream opening(Vector v) throws Exception {
    if (v.says().containsKey("passphrase")) {
      return Age.opening(new ByteArrayInputStream(v.file()), v.of("passphrase").toCharArray());
    }
    String text = new String(v.file(), StandardCharsets.ISO_8859_1);
    int from = text.indexOf('\n', text.indexOf("\n--- ") + 1) + 1;
    InputStream in = new ByteArrayInputStream(v.file(), from, v.file().length - from);
    byte[] nonce = in.readNBytes(16);
    if (nonce.length < 16) {
      throw AgeHeader.damaged();
    }
    return new SealedInput(in, AgeHeader.payloadKey(HexFormat.of().parseHex(v.of("file key")), nonce));
  }

  @ParameterizedTest
  @MethodSource("vectors")
  void everyPublishedVectorIsOpenedOrRefusedAsItSays(String name) throws Exception {
    Vector v = read(name);
    ByteArrayOutputStream given = new ByteArrayOutputStream();
    RefusedException refused = null;
    try (InputStream in = opening(v)) {
      byte[] some = new byte[1000];
      for (int n = in.read(some, 0, some.length); n >= 0; n = in.read(some, 0, some.length)) {
        given.write(some, 0, n);
      }
    } catch (RefusedException e) {
      refused = e;
    }
    if (v.of("expect").equals("success")) {
      assertThat(refused).isNull();
    } else {
      assertThat(refused).as(v.of("expect")).isNotNull();
    }
    if (v.says().containsKey("payload")) {
      assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(given.toByteArray()))).isEqualTo(v.of("payload"));
    } else {
      assertThat(given.size()).isZero();
    }
  }

  private static byte[] sealed(byte[] plain) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (OutputStream sealing = Age.sealing(out, PASSPHRASE, LITTLE_WORK, new Random(5))) {
      sealing.write(plain);
    }
    return out.toByteArray();
  }

  @Test
  void whatWasSealedOpensAgainWhateverItsLength() throws Exception {
    Random random = new Random(7);
    for (int length : new int[] {0, 1, Pieces.BYTES - 1, Pieces.BYTES, Pieces.BYTES + 1, 2 * Pieces.BYTES, 3 * Pieces.BYTES + 77}) {
      byte[] plain = new byte[length];
      random.nextBytes(plain);
      byte[] sealed = sealed(plain);
      assertThat(Age.opening(new ByteArrayInputStream(sealed), PASSPHRASE).readAllBytes()).as("%d bytes", length).isEqualTo(plain);
    }
  }

  @Test
  void anotherPassphraseIsToldAndACutFileToo() throws Exception {
    byte[] sealed = sealed(new byte[200_000]);
    assertThatThrownBy(() -> Age.opening(new ByteArrayInputStream(sealed), "another".toCharArray()))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("The passphrase does not open this backup");
    for (int cut : new int[] {10, 100, 180, 400, 65_800, sealed.length - 1}) {
      byte[] less = Arrays.copyOf(sealed, cut);
      assertThatThrownBy(() -> Age.opening(new ByteArrayInputStream(less), PASSPHRASE).readAllBytes())
          .as("cut to %d bytes", cut)
          .isInstanceOf(RefusedException.class)
          .hasMessageContaining("cut");
    }
  }
}
