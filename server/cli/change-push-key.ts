// `change-push-key`: new keys to sign pushes with. Phones added before go on being told with the earlier ones, unless these are to be forgotten.
import { changeVapidKeys } from '../notify/vapid-keys.ts';
import { type Command, print } from './command.ts';
import { changeStored } from './open-stored.ts';
import { parseOptions } from './parse-options.ts';

const usage = `Usage: npm run takewell -- change-push-key [--forget-earlier] [--json]

Makes new keys for pushes; start the service again afterwards. A phone takes the new key when Takewell is opened on it;
until then pushes to it are signed with the key it was added with. --forget-earlier ends that: for keys that got out.
Every phone is then told nothing until Takewell has been opened on it.
`;

export const changePushKey: Command = {
  usage,
  async run(args, terminal) {
    const { options } = parseOptions(args, { 'forget-earlier': 'flag', json: 'flag' });
    const forgetEarlier = options['forget-earlier'] === true;
    const publicKey = await changeStored(terminal, (store) => changeVapidKeys(store.settings, forgetEarlier));
    const line = 'New keys are made: start the service again, then open Takewell once on each phone.';
    await print(terminal, options.json === true, { publicKey, forgotEarlier: forgetEarlier }, [line]);
    return 0;
  },
};
