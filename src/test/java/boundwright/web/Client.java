package boundwright.web;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A plain browser without scripts: keeps cookies, follows the redirect after a form, reads hidden fields. */
final class Client {
  private final String base;
  private final HttpClient http =
      HttpClient.newBuilder().cookieHandler(new CookieManager()).followRedirects(HttpClient.Redirect.NORMAL).build();

  Client(int port) {
    this("http://127.0.0.1:" + port);
  }

  Client(String base) {
    this.base = base;
  }

  /** The browser of whoever sits at the machine itself, which others can reach too: it comes in by the link of the terminal. */
  static Client atTheMachine(WebServer server) {
    Client client = new Client(server.port());
    String entrance = server.entrance().replaceFirst("https?://[^/]*", "");
    HttpResponse<String> in = client.post(entrance, "csrf", hidden(client.get(entrance).body(), "csrf"));
    if (in.statusCode() != 200) {
      throw new AssertionError(in.statusCode() + " " + in.body());
    }
    return client;
  }

  String base() {
    return base;
  }

  HttpResponse<String> get(String path, String... headers) {
    return send(request(path, headers).GET().build());
  }

  /** As {@link #get}, for what is no text. */
  HttpResponse<byte[]> bytes(String path) {
    try {
      return http.send(request(path).GET().build(), HttpResponse.BodyHandlers.ofByteArray());
    } catch (IOException e) {
      throw new AssertionError(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  /** Sends a form; {@code fields} are names and values in turn. */
  HttpResponse<String> post(String path, String[] headers, String... fields) {
    StringBuilder body = new StringBuilder();
    for (int i = 0; i < fields.length; i += 2) {
      body.append(i == 0 ? "" : "&").append(enc(fields[i])).append('=').append(enc(fields[i + 1]));
    }
    return send(
        request(path, headers)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
            .build());
  }

  HttpResponse<String> post(String path, String... fields) {
    return post(path, new String[0], fields);
  }

  /** Sends what a phone kept; the status of the answer. */
  int bring(String csrf, String lines) {
    return send(
            request("/runway/bring", "X-Boundwright-Form", csrf, "Content-Type", "text/plain; charset=utf-8")
                .POST(HttpRequest.BodyPublishers.ofString(lines)).build())
        .statusCode();
  }

  /** Sends one file as a browser's file field does. */
  HttpResponse<String> upload(String path, String csrf, String name, String content) {
    String cut = "----------------------------cut";
    String body =
        "--" + cut + "\r\nContent-Disposition: form-data; name=\"csrf\"\r\n\r\n" + csrf
            + "\r\n--" + cut + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + name
            + "\"\r\nContent-Type: text/csv\r\n\r\n" + content + "\r\n--" + cut + "--\r\n";
    return send(
        request(path)
            .header("Content-Type", "multipart/form-data; boundary=" + cut)
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  /** The value of the first hidden field of this name. */
  static String hidden(String page, String name) {
    Matcher m = Pattern.compile("name=\"" + name + "\" value=\"([^\"]*)\"").matcher(page);
    if (!m.find()) {
      throw new AssertionError("the page has no field " + name + ":\n" + page);
    }
    return m.group(1);
  }

  private HttpRequest.Builder request(String path, String... headers) {
    HttpRequest.Builder builder = HttpRequest.newBuilder(URI.create(base + path));
    for (int i = 0; i < headers.length; i += 2) {
      builder.header(headers[i], headers[i + 1]);
    }
    return builder;
  }

  private HttpResponse<String> send(HttpRequest request) {
    try {
      return http.send(request, HttpResponse.BodyHandlers.ofString());
    } catch (IOException e) {
      throw new AssertionError(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  private static String enc(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
