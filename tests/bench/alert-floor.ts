// The floor of an alert: the same library broker, and a subscriber in its process that POSTs at once for a reading that is too hot.
// It decides nothing else, stores nothing, encrypts nothing.
import http from 'node:http';
import { type AddressInfo, createServer } from 'node:net';
import { Aedes } from 'aedes';

export interface AlertFloor {
  readonly port: number;
  close(): Promise<void>;
}

/** Tells `url` of every reading of `hot` °C or more. */
export async function openAlertFloor(url: string, hot: number): Promise<AlertFloor> {
  const aedes = await Aedes.createBroker({});
  const server = createServer(aedes.handle);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const hear: Parameters<typeof aedes.subscribe>[1] = ({ payload }, done) => {
    if (JSON.parse(payload.toString()).temperature >= hot) postBare(url, payload);
    done();
  };
  await new Promise<void>((resolve) => aedes.subscribe('takewell/#', hear, resolve));
  return {
    port: (server.address() as AddressInfo).port,
    async close() {
      await new Promise<void>((resolve) => aedes.close(() => resolve()));
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

/** On a connection of its own, as the service does: between two alerts of a night no connection stays open. */
function postBare(url: string, body: string | Buffer): void {
  http.request(url, { method: 'POST', agent: false }, (response) => response.resume()).end(body);
}
