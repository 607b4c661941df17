package boundwright.clip.pose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import boundwright.quantity.RefusedException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The npm client is a made-up command here, so that every way of failing can be shown. */
class WeightsTest {
  @TempDir Path dir;

  @BeforeEach
  void shellOnly() {
    assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "These checks use a shell script as the npm client.");
  }

  private Weights with(String script) throws IOException {
    Path file = dir.resolve("npm.sh");
    Files.writeString(file, script);
    return new Weights(dir.resolve("weights"), List.of("/bin/sh", file.toString()));
  }

  private void nothingLeft() throws IOException {
    try (Stream<Path> all = Files.list(dir.resolve("weights"))) {
      assertThat(all).as("no half-fetched file stays").isEmpty();
    }
  }

  @Test
  void sayThatNpmIsMissing() throws IOException {
    Weights w = new Weights(dir.resolve("weights"), List.of(dir.resolve("no-such-npm").toString()));
    assertThatThrownBy(() -> w.landmarks(Weights.Size.FULL))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("npm client")
        .hasMessageContaining("Install npm");
    nothingLeft();
  }

  @Test
  void sayThatTheFetchFailedAndWhy() throws IOException {
    Weights w = with("echo 'npm error code ENOTFOUND' >&2\necho 'npm error request to somewhere failed' >&2\nexit 7\n");
    assertThatThrownBy(w::detector)
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("code 7 (ENOTFOUND)")
        .hasMessageContaining("Connect to the internet")
        .hasMessageNotContaining("somewhere");
    nothingLeft();
  }

  @Test
  void sayThatThereIsNoPackage() throws IOException {
    Weights w = with("exit 0\n");
    assertThatThrownBy(w::detector).isInstanceOf(RefusedException.class).hasMessageContaining("there is no package");
    nothingLeft();
  }

  @Test
  void refuseAFileWithAnotherSum() throws IOException {
    Files.write(dir.resolve("p.tgz"), tarball(
        "package/pose_landmark_full.tflite", "package/pose_landmark_lite.tflite", "package/pose_solution_packed_assets.data"));
    Weights w = with("cp '" + dir.resolve("p.tgz") + "' mediapipe-pose.tgz\n");
    // SHA-256 of the three bytes abc: FIPS 180-4 example (published)
    assertThatThrownBy(() -> w.landmarks(Weights.Size.FULL))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")
        .hasMessageContaining("not used");
    nothingLeft();
  }

  @Test
  void refuseAPackageWithoutTheFiles() throws IOException {
    Files.write(dir.resolve("p.tgz"), tarball("package/../../pose_landmark_full.tflite"));
    Weights w = with("cp '" + dir.resolve("p.tgz") + "' mediapipe-pose.tgz\n");
    assertThatThrownBy(w::detector).isInstanceOf(RefusedException.class).hasMessageContaining("has no file");
    nothingLeft();
    assertThat(dir.resolve("pose_landmark_full.tflite")).doesNotExist();
  }

  @Test
  void refuseADamagedPackage() throws IOException {
    byte[] whole = tarball("package/pose_landmark_full.tflite");
    Files.write(dir.resolve("p.tgz"), java.util.Arrays.copyOf(whole, whole.length / 2));
    Weights w = with("cp '" + dir.resolve("p.tgz") + "' mediapipe-pose.tgz\n");
    assertThatThrownBy(w::detector).isInstanceOf(RefusedException.class).hasMessageContaining("came damaged");
    nothingLeft();
  }

  private static byte[] tarball(String... names) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream zip = new GZIPOutputStream(out)) {
      for (String name : names) {
        byte[] head = new byte[512];
        byte[] n = name.getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(n, 0, head, 0, n.length);
        byte[] size = "00000000003".getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(size, 0, head, 124, size.length);
        zip.write(head);
        byte[] body = new byte[512];
        System.arraycopy("abc".getBytes(StandardCharsets.US_ASCII), 0, body, 0, 3);
        zip.write(body);
      }
      zip.write(new byte[1024]);
    }
    return out.toByteArray();
  }
}
