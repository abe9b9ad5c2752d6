// Talks to /api/v1. A refusal comes out as ApiProblem in plain words; being signed out is told to whoever listens.
import type { ProblemDetails } from '../shared/api/common.ts';
import { readerLanguage } from './reader-language.ts';
import { words } from './strings.ts';

const timeOutMs = 20_000;
const base = '/api/v1';

export interface FieldFault {
  readonly where: string;
  readonly reason: string;
}

/** What went wrong, ready to be shown. `status` 0 = the service was not reached. */
export class ApiProblem extends Error {
  readonly status: number;
  readonly faults: readonly FieldFault[];
  constructor(message: string, status: number, faults: readonly FieldFault[] = []) {
    super(message);
    this.name = 'ApiProblem';
    this.status = status;
    this.faults = faults;
  }
}

let onSignedOut: () => void = () => undefined;
/** Sets what happens when the service says that nobody is signed in. */
export function whenSignedOut(act: () => void): void {
  onSignedOut = act;
}

function plainWords(status: number): string {
  const { problems } = words;
  if (status === 401) return problems.signInAgain;
  if (status === 403) return problems.notAllowed;
  if (status === 404) return problems.notFound;
  if (status === 429) return problems.tooMany;
  return status >= 500 ? problems.server : problems.badAnswer;
}

function isProblem(value: unknown): value is ProblemDetails {
  return typeof value === 'object' && value !== null && 'title' in value && 'status' in value;
}

/** The service's own words where it gave some, else ours for the status. */
export function problemFrom(status: number, body: unknown): ApiProblem {
  const fallback = plainWords(status);
  if (!isProblem(body)) return new ApiProblem(fallback, status);
  const isOurs = status < 500 || status === 503;
  return new ApiProblem(isOurs && body.detail !== '' ? body.detail : fallback, status, body.faults ?? []);
}

async function reach(path: string, init: RequestInit): Promise<Response> {
  try {
    const headers = { ...init.headers, 'accept-language': readerLanguage };
    const signal = AbortSignal.timeout(timeOutMs);
    return await fetch(base + path, { ...init, headers, credentials: 'same-origin', signal });
  } catch (cause) {
    const isSlow = cause instanceof DOMException && cause.name === 'TimeoutError';
    throw new ApiProblem(isSlow ? words.problems.timeOut : words.problems.unreachable, 0);
  }
}

async function bodyOf(response: Response): Promise<unknown> {
  const text = await response.text();
  if (text === '') return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

async function checked(response: Response, path: string): Promise<unknown> {
  const body = await bodyOf(response);
  if (response.ok) return body;
  if (response.status === 401 && path !== '/session') onSignedOut();
  throw problemFrom(response.status, body);
}

/** GET; the caller names the shape of the answer. */
export async function getJson<T>(path: string): Promise<T> {
  const response = await reach(path, { headers: { accept: 'application/json' } });
  return (await checked(response, path)) as T;
}

/** The answer and, when it was kept by the offline shell, the time it was kept. */
export async function getKept<T>(path: string): Promise<{ readonly body: T; readonly keptAt: string | null }> {
  const response = await reach(path, { headers: { accept: 'application/json' } });
  const keptAt = response.headers.get('x-takewell-kept-at');
  return { body: (await checked(response, path)) as T, keptAt };
}

/** POST, PUT, PATCH or DELETE with a JSON body. */
export async function sendJson<T = unknown>(
  method: 'POST' | 'PUT' | 'PATCH' | 'DELETE',
  path: string,
  body?: object,
  headers: Record<string, string> = {},
): Promise<T> {
  const hasBody = body !== undefined || method !== 'DELETE';
  const response = await reach(path, {
    method,
    headers: hasBody ? { 'content-type': 'application/json', ...headers } : headers,
    ...(hasBody ? { body: JSON.stringify(body ?? {}) } : {}),
  });
  return (await checked(response, path)) as T;
}
