// Which headers a person may add to a webhook: a token of RFC 9110 §5.6.2 that does not speak for the connection or for us.

const ours =
  /^(host|content-.*|transfer-encoding|connection|keep-alive|proxy-.*|te|trailer|upgrade|expect|user-agent|takewell-.*)$/i;

export function isHeaderName(name: string): boolean {
  return /^[!#$%&'*+.^_`|~0-9A-Za-z-]{1,100}$/.test(name) && !ours.test(name);
}
