// A plain HTTP client of the service: JSON in and out, and the session cookie kept.
export interface Answer<T> {
  readonly status: number;
  readonly body: T;
  readonly headers: Headers;
}

export interface ApiClient {
  /** `name=value`, to hand to a browser. */
  cookie(): string;
  get<T>(path: string): Promise<Answer<T>>;
  text(path: string): Promise<Answer<string>>;
  post<T>(path: string, body?: unknown): Promise<Answer<T>>;
  patch<T>(path: string, body: unknown): Promise<Answer<T>>;
  put<T>(path: string, body: unknown): Promise<Answer<T>>;
  delete<T>(path: string): Promise<Answer<T>>;
}

/** Answers are returned whatever their status: the test says what it expects. */
export function createApiClient(url: string, headers: Record<string, string> = {}): ApiClient {
  let cookie = '';
  const send = async (method: string, path: string, body?: unknown) => {
    const answer = await fetch(`${url}/api/v1${path}`, {
      method,
      headers: {
        ...headers,
        ...(cookie && { cookie }),
        ...(body !== undefined && { 'content-type': 'application/json' }),
      },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    });
    cookie = answer.headers.get('set-cookie')?.split(';')[0] ?? cookie;
    return answer;
  };
  const json = async <T>(method: string, path: string, body?: unknown): Promise<Answer<T>> => {
    const answer = await send(method, path, body);
    const text = await answer.text();
    return { status: answer.status, headers: answer.headers, body: (text === '' ? null : JSON.parse(text)) as T };
  };
  return {
    cookie: () => cookie,
    get: (path) => json('GET', path),
    async text(path) {
      const answer = await send('GET', path);
      return { status: answer.status, headers: answer.headers, body: await answer.text() };
    },
    post: (path, body) => json('POST', path, body),
    patch: (path, body) => json('PATCH', path, body),
    put: (path, body) => json('PUT', path, body),
    delete: (path) => json('DELETE', path),
  };
}
